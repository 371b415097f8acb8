import { randomUUID } from 'node:crypto';
import { resolve } from 'node:path';
import { Day, Instant } from '@libs/contracts';
import type { AtTheMachine, Plant } from '@libs/plant';
import type { RulebookFiles, Rulebook } from '@libs/rulebook';
import { Command } from 'commander';
import { isKeyReused, writePlant } from '../composition/open-plant';
import { Usable } from '../exit-code';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';
import { filesIn, problemsInWords, wellRead } from '../rulebook-folder';

type IssueOptions = DataOptions & {
  readonly check: boolean;
  readonly from?: string;
  readonly approvedBy?: string;
  readonly agencyReference?: string;
  readonly agencyDate?: string;
};

const sender = () => ({ key: randomUUID(), actor: 'office', assurance: 'token' as const });

/** From now on, unless a later or earlier moment is named. History brought in is judged by what was in force then. */
const effectiveFrom = (named: string | undefined): string => {
  if (named === undefined) return new Date().toISOString();
  if (!Instant.safeParse(named).success)
    throw new Usable(
      `--from: ${named} is not a date and time with offset, such as 2026-03-14T06:00:00-05:00.`,
    );
  return named;
};

const agencyOf = ({ agencyReference: reference, agencyDate: approvedOn }: IssueOptions): AtTheMachine => {
  if (reference === undefined && approvedOn === undefined) return {};
  if (reference === undefined || approvedOn === undefined || !Day.safeParse(approvedOn).success)
    throw new Usable('Name both --agency-reference and --agency-date, such as 2026-03-14.');
  return { agency: { reference, approvedOn } };
};

/** Whoever is named has to be somebody who may approve: an administrator at the machine answers for that. */
const approverIn = async (plant: Plant, { approvedBy }: IssueOptions): Promise<AtTheMachine> => {
  if (approvedBy === undefined) return {};
  const people = await plant.people();
  const approver = people.find(({ person }) => person === approvedBy);
  if (people.length > 0 && approver?.roles.some((role) => APPROVERS.includes(role)) !== true)
    throw new Usable(
      `--approved-by: ${approvedBy} is no quality manager or administrator of this plant. Name them by their id: studbook person --help`,
    );
  return { approvedBy };
};
const APPROVERS: readonly string[] = ['quality-manager', 'administrator'];

type Done = { readonly revision: number } | { readonly proposal: string };

/** A plant is opened once, under the name its first rulebook gives it. */
const issueIn = (files: RulebookFiles, { name, zone }: Rulebook, options: IssueOptions): Promise<Done> =>
  writePlant(folderOf(options), async (plant) => {
    await plant.open(name, zone, false, sender()).catch((error: unknown) => {
      if (!isKeyReused(error)) throw error;
    });
    const approval = { ...(await approverIn(plant, options)), ...agencyOf(options) };
    const latest = (await plant.rulebook.files({ revision: null }))?.revision ?? null;
    return latest === null || approval.approvedBy !== undefined
      ? issueNow(plant, files, effectiveFrom(options.from), approval)
      : handIn(plant, files, latest, options);
  });

const issueNow = async (
  plant: Plant,
  files: RulebookFiles,
  from: string,
  approval: AtTheMachine,
): Promise<Done> => {
  const issued = await plant.issueRevision(files, from, sender(), approval);
  if (issued.ok) return { revision: issued.revision };
  if (issued.rejection !== undefined) throw new Usable(notIssued(issued.rejection.code));
  throw new Usable(problemsInWords(issued.problems));
};

/** Nobody who may approve is named: it waits on screen for a second person. */
const handIn = async (
  plant: Plant,
  files: RulebookFiles,
  base: number,
  options: IssueOptions,
): Promise<Done> => {
  const { agency } = agencyOf(options);
  const handed = await plant.rulebook.propose(
    {
      files,
      base,
      ...(options.from === undefined ? {} : { effectiveFrom: effectiveFrom(options.from) }),
      ...(agency === undefined ? {} : { agency }),
    },
    sender(),
  );
  if (handed.ok) return { proposal: handed.answer.proposal };
  throw new Usable(notIssued(handed.rejection.code));
};

const WHY_NOT: { readonly [code: string]: string } = {
  'agency-approval-needed':
    'It changes design or manual: name the inspection agency’s approval with --agency-reference and --agency-date.',
  'agency-approval-later': 'The agency’s approval is dated after the revision would take effect.',
  'effective-in-the-past': '--from lies in the past, and a revision changes nothing that was before it.',
  'nothing-changed': 'These files are those of the latest revision: nothing is different.',
};
const notIssued = (code: string): string => WHY_NOT[code] ?? `It was not issued: ${code}`;

export const issueCommand = (): Command =>
  new Command('issue')
    .description("issue a rulebook's files as the plant's next revision")
    .argument('<folder>', 'holds plant.yaml, operations*.yaml, covers.csv, values.csv and their neighbours')
    .option('--check', 'only say what needs mending', false)
    .option('--from <instant>', 'when it comes into force (default: now)')
    .option('--approved-by <person>', 'the id of whoever has approved it: quality manager or administrator')
    .option('--agency-reference <text>', "the inspection agency's approval of it")
    .option('--agency-date <day>', "the day on the agency's approval")
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Every place that needs mending is named at once, with file, row and column; nothing is issued until all are.
A plant's first revision is issued as it is. From the second on, one without --approved-by is handed in, and waits on
the screen Rulebook for a second person to approve. What changes design or manual needs the agency's approval.
Homes whose first section enters the line from then on are judged by it; those on the line keep theirs.
Stop the server first: it keeps the same ledger.

Examples:
  studbook issue ./my-rulebook --check
  studbook issue ./my-rulebook --data ./my-plant --approved-by p-101
  studbook issue ./my-rulebook --approved-by p-101 --agency-reference "letter 26-114" --agency-date 2026-03-02`,
    )
    .action(async (folder: string, options: IssueOptions) => {
      const files = filesIn(resolve(folder));
      const rulebook = wellRead(files);
      const { operations, stations } = rulebook;
      const size = { operations: operations.length, stations: stations.length };
      if (options.check) tell(options, { ok: true, ...size }, `All is well: ${sizeSays(size)}.`);
      else tellDone(options, await issueIn(files, rulebook, options), size);
    });

type Size = { readonly operations: number; readonly stations: number };
const sizeSays = ({ operations, stations }: Size): string =>
  `${operations} operations at ${stations} stations`;

const tellDone = (options: IssueOptions, done: Done, size: Size): void =>
  tell(
    options,
    { ...done, ...size },
    'revision' in done
      ? `Issued as revision ${done.revision}: ${sizeSays(size)}.`
      : `Handed in: ${sizeSays(size)}. A second person approves it on the screen Rulebook.`,
  );

const tell = ({ json }: IssueOptions, value: object, text: string): void => {
  if (json) printJson(value);
  else print(text);
};
