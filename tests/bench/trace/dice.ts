/** Chance from a seed: the same seed, the same plant, on every machine. (Mulberry32, T. Ettinger.) */
export class Dice {
  private state: number;

  constructor(seed: number) {
    this.state = Math.imul(seed ^ 0x2f6e2b1, 0x9e3779b1) >>> 0;
    for (let warm = 0; warm < 4; warm++) this.next();
  }

  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let mixed = this.state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  is(chance: number): boolean {
    return this.next() < chance;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  /** Spread evenly over orders of magnitude. */
  scale(low: number, high: number): number {
    return low * (high / low) ** this.next();
  }

  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  bell(): number {
    return Math.sqrt(-2 * Math.log(1 - this.next())) * Math.cos(2 * Math.PI * this.next());
  }

  pick<T>(items: readonly T[]): T {
    const item = items[Math.floor(this.next() * items.length)];
    if (item === undefined) throw new Error('nothing to pick from');
    return item;
  }

  /** A place in a list of weights. */
  weighted(weights: readonly number[]): number {
    let left = this.next() * weights.reduce((sum, weight) => sum + weight, 0);
    for (let at = 0; at < weights.length - 1; at++) {
      left -= weights[at] ?? 0;
      if (left < 0) return at;
    }
    return weights.length - 1;
  }
}
