/** The units of one group while it is gathered. Units come in order, each perhaps several times in a row. */
export class Members {
  readonly belong: number[] = [];
  /** In part, because only one section of the home does; or perhaps, because nobody recorded it. */
  readonly partly: number[] = [];
  private readonly times: number[] = [];

  add(unit: number): void {
    const last = this.belong.length - 1;
    if (this.belong[last] === unit) this.times[last] = (this.times[last] ?? 0) + 1;
    else {
      this.belong.push(unit);
      this.times.push(1);
    }
  }

  addUnclear(unit: number): void {
    if (this.partly.at(-1) !== unit && this.belong.at(-1) !== unit) this.partly.push(unit);
  }

  /** Once all rows are read: a unit with more rows than belong belongs in part. */
  settled(rowsOf: ReadonlyMap<number, number>): Members {
    const settled = new Members();
    const partly = new Set(this.partly);
    this.belong.forEach((unit, at) => {
      if ((this.times[at] ?? 0) < (rowsOf.get(unit) ?? 0)) partly.add(unit);
      else {
        partly.delete(unit);
        settled.add(unit);
      }
    });
    settled.partly.push(...[...partly].sort((one, other) => one - other));
    return settled;
  }
}

/** Two numbers of 32 bits that stand for a unit's place: sums of them tell sets of units apart. */
const first = (unit: number): number => scramble(unit + 0x9e3779b9);
const second = (unit: number): number => scramble(unit ^ 0x5bf03635);

const scramble = (value: number): number => {
  let mixed = Math.imul(value ^ (value >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) >>> 0;
};

/** Equal for equal sets. Unequal sets agree by chance once in 2^64. */
export const sameHomesKey = (belong: readonly number[], partly: readonly number[]): string =>
  `${print(belong)}-${print(partly)}`;

const print = (units: readonly number[]): string => {
  let a = 0;
  let b = 0;
  for (const unit of units) {
    a ^= first(unit);
    b ^= second(unit);
  }
  return `${units.length}:${(a >>> 0).toString(36)}${(b >>> 0).toString(36)}`;
};
