/** What was asked for goes to stdout, one JSON document where `--json` asks for it. */
export const print = (text: string): void => {
  process.stdout.write(`${text}\n`);
};

export const printJson = (value: unknown): void => {
  print(JSON.stringify(value, null, 2));
};
