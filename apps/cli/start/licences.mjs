import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './project.mjs';

/**
 * Every package that is installed, its licence, and whether it runs a script when it is: what package-lock.json holds,
 * read beside what lies in node_modules. `--json` for programs; `--runtime` leaves the tools of tests out.
 */
const lock = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8'));
const allowed = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).allowScripts ?? {};
const runtime = process.argv.includes('--runtime');

const licenceIn = (place) => {
  const file = join(ROOT, place, 'package.json');
  if (!existsSync(file)) return undefined;
  const { license, licenses } = JSON.parse(readFileSync(file, 'utf8'));
  return license?.type ?? license ?? licenses?.map(({ type }) => type).join(' OR ') ?? licenceText(place);
};

/** A package that names none may still carry one: by the words its text begins with. */
const licenceText = (place) => {
  const file = ['LICENSE', 'LICENSE.md', 'license', 'LICENCE']
    .map((name) => join(ROOT, place, name))
    .find(existsSync);
  const text = file === undefined ? '' : readFileSync(file, 'utf8').slice(0, 400);
  if (/\bMIT License\b|Permission is hereby granted, free of charge/.test(text)) return 'MIT';
  return /Apache License\s+Version 2\.0/.test(text) ? 'Apache-2.0' : undefined;
};

const packages = Object.entries(lock.packages)
  .filter(([place, entry]) => place !== '' && !(runtime && entry.dev === true))
  .map(([place, entry]) => {
    const name = place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length);
    const script = entry.hasInstallScript === true;
    return {
      name,
      version: entry.version,
      licence: entry.license ?? licenceIn(place) ?? 'unknown',
      ...(script ? { installScript: allowed[name] === true ? 'runs' : 'does not run' } : {}),
      from: new URL(entry.resolved ?? 'https://registry.npmjs.org').host,
      hashed: entry.integrity !== undefined,
    };
  })
  .sort((one, other) => (one.name < other.name ? -1 : 1));

if (process.argv.includes('--json')) process.stdout.write(`${JSON.stringify(packages)}\n`);
else {
  const byLicence = Map.groupBy?.(packages, ({ licence }) => licence) ?? new Map();
  if (byLicence.size === 0)
    for (const one of packages) byLicence.set(one.licence, [...(byLicence.get(one.licence) ?? []), one]);
  for (const [licence, held] of [...byLicence].sort((one, other) => other[1].length - one[1].length)) {
    process.stdout.write(`${licence} (${held.length})\n`);
    for (const { name, version, installScript } of held)
      process.stdout.write(
        `  ${name} ${version}${installScript === undefined ? '' : `   install script ${installScript}`}\n`,
      );
  }
  process.stdout.write(`${packages.length} packages\n`);
}
