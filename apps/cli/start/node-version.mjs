/** Imported first by every launcher: an older Node would stop later, with words that help nobody. */
const NEEDED = [20, 19];

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < NEEDED[0] || (major === NEEDED[0] && minor < NEEDED[1])) {
  console.error(
    `Studbook needs Node.js ${NEEDED.join('.')} or newer; this is ${process.versions.node}.\n` +
      'Install a newer one from your system’s packages or nodejs.org, then run the same command again.',
  );
  process.exit(1);
}
