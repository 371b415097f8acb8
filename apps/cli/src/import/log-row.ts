/** One line of an operation log, whatever its format: named texts, and where in the file it began. */
export type LogRow = {
  readonly line: number;
  readonly fields: { readonly [name: string]: string };
  /** Why the row cannot be read as one, where it cannot. */
  readonly broken?: string;
};

/** A file that cannot be read as what it claims to be. Nothing of it after this place is taken. */
export class LogUnreadable extends Error {
  constructor(
    readonly file: string,
    readonly line: number | null,
    says: string,
  ) {
    super(`${file}${line === null ? '' : `, line ${line}`}: ${says}`);
    this.name = 'LogUnreadable';
  }
}
