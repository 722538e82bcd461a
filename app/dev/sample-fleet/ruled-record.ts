// A record that grows by the program's own rules, each change judged as seen on the day it is made and stamped with who made it. What the
// rules refuse stops the making of the sample, so that no story contradicts itself.
import { shippedCodeKinds } from '../../domain/codes/code-kinds.ts';
import { generalPack } from '../../domain/programming/general-pack.ts';
import type { Day } from '../../domain/shared/day.ts';
import type { Stamp } from '../../domain/shared/fact.ts';
import { applyChange } from '../../domain/vehicle/apply-change.ts';
import { type FactList, type Section, vehicleChangeSchema } from '../../domain/vehicle/change.ts';
import { takeInVehicle } from '../../domain/vehicle/take-in.ts';
import type { Vehicle } from '../../domain/vehicle/vehicle.ts';
import { people } from './sample-shop.ts';
import { type Beginning, takeInOf } from './take-in-of.ts';

/** A record with the revision and the instant of its last change, as its file keeps them. */
export type Told = { readonly data: Vehicle; readonly revision: number; readonly savedAt: string };

type Changes = Readonly<Record<string, unknown>>;

export class RuledRecord {
  #record: Vehicle;
  #day: Day;
  #minute = 0;
  #stamp: Stamp;
  #revision = 1;
  #facts = 0;

  constructor(stockNumber: string, serial: number, beginning: Beginning) {
    this.#day = beginning.boughtOn;
    this.#stamp = this.#nextStamp(people.manager);
    const taken = takeInVehicle(`sample-${stockNumber.toLowerCase()}`, takeInOf(stockNumber, serial, beginning), {
      today: this.#day,
      market: 'US',
      stamp: this.#stamp,
    });
    if (!taken.ok) throw new Error(`${stockNumber}: ${JSON.stringify(taken.error)}`);
    this.#record = taken.value;
  }

  /** Each entry of a day seven minutes after the one before, from eight in the morning where the shop is. */
  #nextStamp(by: string): Stamp {
    const minutes = 13 * 60 + this.#minute;
    this.#minute += 7;
    const time = `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
    return { by, at: `${this.#day}T${time}:00.000Z` };
  }

  get day(): Day {
    return this.#day;
  }

  /** Goes on to a later day. */
  on(day: Day): this {
    if (day < this.#day) throw new Error(`${this.#record.identity.stockNumber}: ${day} is told after ${this.#day}`);
    if (day > this.#day) this.#minute = 0;
    this.#day = day;
    return this;
  }

  told(): Told {
    return { data: this.#record, revision: this.#revision, savedAt: this.#stamp.at };
  }

  protected change(change: unknown, by: string): void {
    const told = vehicleChangeSchema.parse(change);
    this.#stamp = this.#nextStamp(by);
    const result = applyChange(this.#record, told, {
      today: this.#day,
      market: 'US',
      stamp: this.#stamp,
      rulePack: generalPack,
      codeKinds: shippedCodeKinds,
    });
    if (!result.ok)
      throw new Error(`${this.#record.identity.stockNumber} on ${this.#day}: ${JSON.stringify(result.error)}`);
    this.#record = result.value;
    this.#revision += 1;
  }

  protected put(list: FactList, item: Changes, by: string): string {
    this.#facts += 1;
    const id = `fact-${String(this.#facts).padStart(3, '0')}`;
    this.change({ kind: 'put', list, item: { id, ...item } }, by);
    return id;
  }

  protected amend(list: FactList, id: string, changes: Changes, by: string): void {
    const facts: readonly { id: string; entered: Stamp }[] = this.#record[list];
    const fact = facts.find((one) => one.id === id);
    if (!fact) throw new Error(`${this.#record.identity.stockNumber}: no ${id} in ${list}`);
    const { entered: _, ...draft } = fact;
    this.change({ kind: 'put', list, item: { ...draft, ...changes } }, by);
  }

  protected set(section: Section, changes: Changes, by: string): void {
    this.change({ kind: 'set', section, value: { ...this.#record[section], ...changes } }, by);
  }
}
