/** The units of one group while it is gathered. Units come in order, each perhaps several times in a row. */
export class Members {
  readonly belong: number[] = [];
  readonly unclear: number[] = [];

  add(unit: number): void {
    if (this.belong.at(-1) !== unit) this.belong.push(unit);
  }

  /** Cannot be excluded; forgotten when another row of the unit says that it belongs. */
  addUnclear(unit: number): void {
    if (this.unclear.at(-1) !== unit && this.belong.at(-1) !== unit) this.unclear.push(unit);
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
export const sameHomesKey = (belong: readonly number[], unclear: readonly number[]): string =>
  `${print(belong)}-${print(unclear)}`;

const print = (units: readonly number[]): string => {
  let a = 0;
  let b = 0;
  for (const unit of units) {
    a ^= first(unit);
    b ^= second(unit);
  }
  return `${units.length}:${(a >>> 0).toString(36)}${(b >>> 0).toString(36)}`;
};
