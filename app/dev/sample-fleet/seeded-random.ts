// Numbers that look random and are the same on every run. For the sample fleet only; nothing secret may hang on them.

export type Random = {
  /** From 0 up to, not including, 1. */
  readonly unit: () => number;
  /** A whole number from `least` to `most`, both included. */
  readonly whole: (least: number, most: number) => number;
  readonly chance: (probability: number) => boolean;
  readonly pick: <Value>(values: readonly Value[]) => Value;
};

/** A 32-bit generator (a counter run through a multiply-and-shift mix); the same seed gives the same row of numbers on every machine. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  const unit = () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 4_294_967_296;
  };
  const whole = (least: number, most: number) => least + Math.floor(unit() * (most - least + 1));
  const pick = <Value>(values: readonly Value[]): Value => {
    const value = values[whole(0, values.length - 1)];
    if (value === undefined) throw new Error('There is nothing to pick from.');
    return value;
  };
  return { unit, whole, chance: (probability) => unit() < probability, pick };
}
