// What every use case works with: the open fleet, who is at the desk, today, and the ways out of the program. No Electron.
import { basename } from 'node:path';
import type { AppError, AppErrorCode } from '../contract/app-error.ts';
import type { Desk, LotRow, VehicleView } from '../contract/views.ts';
import type { Person, Shop } from '../domain/fleet/shop.ts';
import type { Prospect } from '../domain/money/weigh-vehicle.ts';
import { rightsWithin } from '../domain/people/rights-within.ts';
import { type Rights, rightsOf } from '../domain/people/role-rights.ts';
import type { Access } from '../domain/people/sign-in.ts';
import { currentPack } from '../domain/programming/current-pack.ts';
import type { Day } from '../domain/shared/day.ts';
import { fail, type Result } from '../domain/shared/result.ts';
import type { Forecast } from '../domain/time/forecast.ts';
import type { ChangeContext } from '../domain/vehicle/apply-change.ts';
import type { VehicleReckoning } from '../domain/vehicle/reckon.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { Telling } from '../storage/fleet-history.ts';
import type { FleetStore } from '../storage/fleet-store.ts';
import type { Foreground } from '../storage/foreground.ts';
import type { Kept } from '../storage/kept.ts';
import { type StorageProblem, storageSentence } from '../storage/storage-problem.ts';
import { afterLock } from './after-lock.ts';
import { defaultShop } from './default-shop.ts';
import type { DeskDependencies } from './desk-dependencies.ts';
import { DeskSignIn, type LockReason, type SignedIn } from './desk-sign-in.ts';
import { ForecastCache } from './forecast-cache.ts';
import { lockedDesk } from './locked-desk.ts';
import { lotRow, vehicleView } from './lot-rows.ts';
import { prospectOf } from './prospect-of.ts';
import { ReckoningCache } from './reckoning-cache.ts';
import { maySeeVehicle, rowFor, viewFor } from './role-rules.ts';
import { UndoStack } from './undo-stack.ts';
import { VaultOwner } from './vault-owner.ts';

export type Answer<Value> = Promise<Result<Value, AppError>>;

export function refuse(code: AppErrorCode, detail = '', problems: AppError['problems'] = []): Result<never, AppError> {
  return fail({ code, detail, problems });
}

const codeOfStorageProblem: Readonly<Record<StorageProblem['code'], AppErrorCode>> = {
  'no-space': 'no-space',
  'no-permission': 'no-permission',
  'folder-gone': 'folder-gone',
  busy: 'busy',
  'stale-revision': 'stale-revision',
  'newer-version': 'newer-version',
  'read-only': 'read-only',
  'not-found': 'not-found',
  damaged: 'unexpected',
  invalid: 'unexpected',
  unknown: 'unexpected',
};

export function refuseStorage(problem: StorageProblem): Result<never, AppError> {
  return refuse(codeOfStorageProblem[problem.code], storageSentence(problem.code));
}

const nobodyYet: Person = { id: 'manager', name: 'Manager', role: 'manager', labourCentsPerHour: null, isActive: true };

const nothingAheadYet = { forecast: null, isForecastToCome: true, openPlan: null, prospect: null };

/** What of the settings every role may know: no rates, no people’s rates. */
function forEverybody({ dealer, checklist, inspection, supportRanges, codeKinds, filingRules }: Shop) {
  return { dealer, checklist, inspection, supportRanges, codeKinds, filingRules };
}

export class DeskContext {
  readonly undo = new UndoStack();
  readonly #cache = new ReckoningCache();
  /** Stores whose sold vehicles have been gone through, so that forecasts are quickly had. */
  readonly #pastIsRead = new WeakSet<FleetStore>();
  readonly forecasts = new ForecastCache(() => [...this.store.vehicles().values()].map((kept) => kept.data));
  readonly deps: DeskDependencies;
  readonly signIn: DeskSignIn;
  readonly vault: VaultOwner;
  /** What a person waits for, before which work of the program's own accord stands back. */
  readonly foreground: Foreground;
  /** The open fleet; another one after the person chose another folder. */
  store: FleetStore;
  /** The fleet that was open before the sample, in this run of the program. */
  cameFrom: string | null = null;
  /** When the newest good backup of the open fleet was made; null until one is known. */
  lastBackupAt: string | null = null;

  constructor(deps: DeskDependencies, store: FleetStore, foreground: Foreground) {
    this.deps = deps;
    this.foreground = foreground;
    this.store = store;
    this.signIn = new DeskSignIn({ clock: deps.clock, shop: () => this.shop(), cost: deps.keyCost });
    this.vault = new VaultOwner({
      clock: deps.clock,
      store: () => this.store,
      personId: () => this.person().id,
      signInRules: () => this.shop().signIn,
      forgetCopied: deps.outside.forgetCopied,
      emit: deps.emit,
      making: deps.vaultMaking,
    });
    this.onLock(() => this.vault.lock());
    this.onLock((reason) => afterLock(this, reason));
    void this.noteBackups();
  }

  /** To be called after the store was exchanged or a backup was made. */
  async noteBackups(): Promise<void> {
    const { store } = this;
    await store.dailyBackup;
    const listed = await store.listBackups();
    if (store !== this.store) return;
    const times = listed.ok ? listed.value.filter((backup) => backup.isGood).map((backup) => backup.madeAt) : [];
    this.lastBackupAt = times.sort().at(-1) ?? null;
    this.deps.emit('desk:changed', this.desk());
  }

  /** The folder alone does not say it: somebody could have laid a fleet of theirs there. */
  isSampleCopy(): boolean {
    return this.store.folder === this.deps.sample.copy && this.shop().sample !== null;
  }

  /** The folder of the fleet to go back to from the sample; null when none is known. */
  fleetBeforeSample(): string | null {
    const folder = this.cameFrom ?? this.deps.deskSettings.get().lastFleetFolder;
    return folder === this.deps.sample.copy ? null : folder;
  }

  shop(): Shop {
    return this.store.shop()?.data ?? defaultShop;
  }

  /** True while forecasts would have to wait for sold vehicles that were left for later. */
  isForecastToCome(): boolean {
    return this.store.readsSoldLater && !this.#pastIsRead.has(this.store);
  }

  notePastIsRead(): void {
    this.#pastIsRead.add(this.store);
  }

  today(): Day {
    return this.shop().sample?.today ?? this.deps.today();
  }

  /** Who has signed in with a secret of their own; null when nobody has, whoever is picked as being at the desk. */
  signedIn(): SignedIn | null {
    return this.signIn.signedIn();
  }

  /** For what must be closed when the desk is locked or another person signs in. Gives the way to stop listening. */
  onLock(listener: (reason: LockReason) => void): () => void {
    return this.signIn.onLock(listener);
  }

  /** What signing in has opened for whoever is at the desk. */
  access(): Access {
    return this.signIn.accessOf(this.person());
  }

  /** What whoever is at the desk may see and do just now: the role's rights, as far as signing in has opened them. */
  rights(): Rights {
    return rightsWithin(rightsOf(this.person().role), this.access());
  }

  /** Who is at the desk: who signed in, else the one chosen last, else the first manager. Does not say that they signed in. */
  person(): Person {
    const people = this.shop().people.filter((person) => person.isActive);
    const chosenId = this.signedIn()?.personId ?? this.deps.deskSettings.get().personId;
    const chosen = people.find((person) => person.id === chosenId);
    return chosen ?? people.find((person) => person.role === 'manager') ?? people[0] ?? nobodyYet;
  }

  changeContext(): ChangeContext {
    return {
      today: this.today(),
      market: this.shop().dealer.market,
      stamp: { by: this.person().id, at: this.deps.clock() },
      rulePack: currentPack(this.shop()),
      codeKinds: this.shop().codeKinds,
    };
  }

  /** Who is at the desk and what is done, for the history of a vehicle. Never the value of a code. */
  telling(kind: Telling['kind'], label: string, reason = ''): Telling {
    return { by: this.person().id, kind, label, reason };
  }

  reckon(vehicle: Vehicle): VehicleReckoning {
    return this.#cache.reckon(vehicle, this.shop(), this.today());
  }

  /** The record if it is there and this person may see it. */
  visible(id: string): Kept<Vehicle> | null {
    const kept = this.store.vehicles().get(id);
    if (!kept || this.signIn.isLocked() || !maySeeVehicle(this.person().role, kept.data, this.reckon(kept.data)))
      return null;
    return kept;
  }

  /** The rows of these vehicles, or of all, as far as this person may see them; with the forecasts that are known already. */
  rows(ids: Iterable<string> = this.store.vehicles().keys()): readonly LotRow[] {
    const { role } = this.person();
    const rights = this.rights();
    const rows: LotRow[] = [];
    if (this.signIn.isLocked()) return rows;
    for (const id of ids) {
      const kept = this.store.vehicles().get(id);
      if (!kept) continue;
      const reckoning = this.reckon(kept.data);
      const forecast = this.forecasts.known(kept.data, this.shop(), this.today()) ?? null;
      if (maySeeVehicle(role, kept.data, reckoning))
        rows.push(rowFor(role, lotRow(kept.data, reckoning, forecast), rights));
    }
    return rows;
  }

  row(id: string): LotRow | null {
    const kept = this.visible(id);
    if (!kept) return null;
    const forecast = this.isForecastToCome() ? null : this.forecasts.forecast(kept.data, this.shop(), this.today());
    return rowFor(this.person().role, lotRow(kept.data, this.reckon(kept.data), forecast), this.rights());
  }

  view(kept: Kept<Vehicle>): VehicleView {
    const reckoning = this.reckon(kept.data);
    const ahead = this.isForecastToCome() ? nothingAheadYet : this.#ahead(kept.data, reckoning);
    return viewFor(this.person().role, vehicleView(kept, reckoning, ahead), this.rights());
  }

  #ahead(vehicle: Vehicle, reckoning: VehicleReckoning) {
    const forecast = this.forecasts.forecast(vehicle, this.shop(), this.today());
    const openPlan = this.forecasts.openPlan(vehicle, this.shop(), this.today());
    return { forecast, isForecastToCome: false, openPlan, prospect: this.prospect(vehicle, reckoning, forecast) };
  }

  /** Null once it is sold: then everything is known. */
  prospect(vehicle: Vehicle, reckoning: VehicleReckoning, forecast: Forecast | null): Prospect | null {
    const { forecasts } = this;
    return prospectOf(vehicle, reckoning, forecast, { shop: this.shop(), today: this.today(), forecasts });
  }

  emitRow(id: string): void {
    this.forecasts.noteChange(id, this.store.vehicles().get(id)?.data ?? null);
    // A locked page keeps what it has covered, and reads everything again when somebody signs in.
    if (this.signIn.isLocked()) return;
    this.deps.emit('lot:row-changed', { id, row: this.row(id) });
  }

  desk(): Desk {
    const kept = this.store.shop();
    const shop = this.shop();
    const { id, name, role } = this.person();
    const { seesMoney } = this.rights();
    const isOwnCopy = this.isSampleCopy();
    const before = isOwnCopy ? this.fleetBeforeSample() : null;
    const desk: Desk = {
      appVersion: this.deps.appVersion,
      today: this.today(),
      theme: this.deps.deskSettings.get().theme,
      fleetName: shop.dealer.name,
      isSample: shop.sample !== null,
      sample: {
        isOwnCopy,
        canOpen: this.deps.sample.shipped !== null && this.store.folder !== this.deps.sample.copy,
        wayBack: before === null ? null : basename(before),
      },
      shop: kept === null ? null : forEverybody(shop),
      people: shop.people.map(({ labourCentsPerHour: _hidden, ...person }) => ({
        ...person,
        secretForm: this.signIn.formOf(person.id),
      })),
      fundingPlans: seesMoney ? shop.fundingPlans.map((plan) => ({ id: plan.id, name: plan.name })) : [],
      person: { id, name, role },
      seesMoney,
      signIn: this.signIn.forDesk(this.person()),
      readOnlyReason: this.store.isReadOnly?.sentence ?? null,
      canTakeOver: this.store.isReadOnly?.canTakeOver ?? false,
      troubleCount: this.store.troubles().length,
      lastBackupAt: this.lastBackupAt,
      undo: this.undo.nextUndo()?.label ?? null,
      redo: this.undo.nextRedo()?.label ?? null,
    };
    return desk.signIn.isLocked ? lockedDesk(desk) : desk;
  }
}
