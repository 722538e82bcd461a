// The program behind the window: opens a fleet and answers the page, one change at a time, by role. No Electron, no window.

import type { AppError } from '../contract/app-error.ts';
import { type ChannelInput, type ChannelName, type ChannelOutput, channels } from '../contract/channels.ts';
import { carriesSecret, withoutWords } from '../contract/secret-inputs.ts';
import { ok, type Result } from '../domain/shared/result.ts';
import { Foreground } from '../storage/foreground.ts';
import { goesFirst, waitsForTheSold } from './answer-order.ts';
import { openFleetArchive, readArchiveSize, writeFleetArchive } from './archive-commands.ts';
import { addAttachment, openAttachment, readAttachment } from './attachment-commands.ts';
import { findCases } from './case-commands.ts';
import { readCodesUsual } from './codes-usual.ts';
import { type Answer, DeskContext, refuse, refuseStorage } from './desk-context.ts';
import type { DeskDependencies } from './desk-dependencies.ts';
import { destroyOverdueCodes } from './destroy-overdue-codes.ts';
import { fillLot } from './fill-lot.ts';
import { whenFirstRowsAreOut } from './first-rows.ts';
import { backUpNow, chooseFleet, openStore, restoreTrouble, settleTrouble, takeOverFleet } from './fleet-commands.ts';
import { readVehicleHistory } from './history-commands.ts';
import { listHolidayPlaces, suggestHolidays } from './holiday-commands.ts';
import { atTheDesk, judgeCall } from './judge-call.ts';
import { lookAtList, takeInList, tryOutList } from './list-import.ts';
import { readShopLogo, setShopLogo } from './logo-commands.ts';
import { exportMoney, readMoney, showExports } from './money-commands.ts';
import {
  bringBackKeys,
  changeSecret,
  giveSecret,
  lockDesk,
  noteActivity,
  readWait,
  signIn,
  takeSecret,
} from './people-commands.ts';
import { readProgram, reportFault } from './program-commands.ts';
import { readNextJobs, readRouteHistory, readRulePack } from './programming-commands.ts';
import {
  chooseSecond,
  leaveSecond,
  previewBackup,
  previewTrouble,
  previewVehicle,
  readSafety,
  restoreAll,
  restoreOne,
} from './safety-commands.ts';
import { beginSampleAgain, leaveSample, openSample, showPutAside } from './sample-commands.ts';
import { openSheet, previewFleetSheet, previewSheet, printSheets, showSheetsFolder } from './sheet-commands.ts';
import { cancelSheets, makeSheets, readSheetChoice } from './sheet-job.ts';
import { findMark } from './sheet-marks.ts';
import { changeShop, readShop, setPerson, setTheme } from './shop-commands.ts';
import { exportTable, showTables } from './table-commands.ts';
import { copyCode, destroyCode, hideCode, lookAtCode, putCode, readKeptCodes } from './vault-code-commands.ts';
import {
  addPersonToVault,
  changeVaultPassPhrase,
  lockVault,
  makeVault,
  newRecoveryKey,
  readVaultState,
  recoverVault,
  removePersonFromVault,
  startVaultAnew,
  unlockVault,
} from './vault-commands.ts';

import { changeVehicle, redo, takeIn, undo, withdraw } from './vehicle-commands.ts';
import { exportWaiting, readWaiting } from './waiting-commands.ts';
import { whatIf } from './what-if.ts';

type Handlers = {
  readonly [Name in ChannelName]: (context: DeskContext, input: ChannelInput<Name>) => Answer<ChannelOutput<Name>>;
};

export const handlers: Handlers = {
  'desk:read': async (context) => ok(context.desk()),
  'desk:set-person': setPerson,
  'people:sign-in': signIn,
  'people:wait': readWait,
  'people:lock': lockDesk,
  'people:active': noteActivity,
  'people:change-secret': changeSecret,
  'people:give-secret': giveSecret,
  'people:take-secret': takeSecret,
  'people:bring-back-keys': bringBackKeys,
  'desk:set-theme': setTheme,
  'lot:read': async (context) => {
    const rows = context.rows();
    fillLot(context, new Set(context.store.vehicles().keys()));
    return ok(rows);
  },
  'vehicle:open': async (context, { id }) => {
    const kept = context.visible(id);
    return kept ? ok(context.view(kept)) : refuse('not-found');
  },
  'vehicle:take-in': takeIn,
  'vehicle:change': changeVehicle,
  'vehicle:what-if': whatIf,
  'vehicle:withdraw': withdraw,
  'vehicle:history': readVehicleHistory,
  'attachment:add': addAttachment,
  'attachment:read': readAttachment,
  'attachment:open': openAttachment,
  'cases:find': findCases,
  'edit:undo': undo,
  'edit:redo': redo,
  'money:read': readMoney,
  'money:export': exportMoney,
  'money:show-folder': showExports,
  'shop:read': readShop,
  'shop:change': changeShop,
  'shop:logo': readShopLogo,
  'shop:set-logo': setShopLogo,
  'programming:pack': readRulePack,
  'programming:routes': readRouteHistory,
  'next-jobs:read': readNextJobs,
  'codes:usual': readCodesUsual,
  'waiting:read': readWaiting,
  'waiting:export': exportWaiting,
  'sheet:preview': previewSheet,
  'sheet:print': printSheets,
  'sheet:open': openSheet,
  'sheet:show-folder': showSheetsFolder,
  'sheet:preview-fleet': previewFleetSheet,
  'sheet:make': makeSheets,
  'sheet:cancel': cancelSheets,
  'sheet:choice': readSheetChoice,
  'sheet:find-mark': findMark,
  'calendar:places': listHolidayPlaces,
  'calendar:suggest-holidays': suggestHolidays,
  'archive:write': writeFleetArchive,
  'archive:size': readArchiveSize,
  'archive:open': openFleetArchive,
  'list:look': lookAtList,
  'list:try': tryOutList,
  'list:take-in': takeInList,
  'table:export': exportTable,
  'table:show-folder': showTables,
  'vault:state': readVaultState,
  'vault:make': makeVault,
  'vault:unlock': unlockVault,
  'vault:lock': lockVault,
  'vault:codes': readKeptCodes,
  'vault:put-code': putCode,
  'vault:look': lookAtCode,
  'vault:hide': hideCode,
  'vault:copy': copyCode,
  'vault:destroy': destroyCode,
  'vault:add-person': addPersonToVault,
  'vault:remove-person': removePersonFromVault,
  'vault:change-pass-phrase': changeVaultPassPhrase,
  'vault:recover': recoverVault,
  'vault:new-recovery-key': newRecoveryKey,
  'vault:start-anew': startVaultAnew,
  'program:read': readProgram,
  'program:report': reportFault,
  'fleet:choose': chooseFleet,
  'fleet:restore-trouble': restoreTrouble,
  'fleet:settle-trouble': settleTrouble,
  'fleet:take-over': takeOverFleet,
  'fleet:back-up': backUpNow,
  'safety:read': readSafety,
  'safety:preview-trouble': previewTrouble,
  'safety:preview-backup': previewBackup,
  'safety:preview-vehicle': previewVehicle,
  'safety:restore-all': restoreAll,
  'safety:restore-vehicle': restoreOne,
  'safety:choose-second': chooseSecond,
  'safety:leave-second': leaveSecond,
  'sample:open': openSample,
  'sample:leave': leaveSample,
  'sample:begin-again': beginSampleAgain,
  'sample:show-put-aside': showPutAside,
};

export type DeskSession = {
  /** Answers one call. The input has been parsed by the contract's schema; the role is judged here. Never throws. */
  readonly answer: <Name extends ChannelName>(name: Name, input: ChannelInput<Name>) => Answer<ChannelOutput<Name>>;
  /** To be called now and then: when the calendar day is another one, everything is reckoned again. */
  readonly dayMayHaveChanged: () => void;
  /** Waits for what is being written, then lets go of the folder. */
  readonly close: () => Promise<void>;
};

export type DeskSessionOptions = DeskDependencies & {
  readonly fleetFolder: string;
  /** Told of what went wrong inside, for the log; the page only learns that something did. */
  readonly report: (what: string, error: unknown) => void;
};

/** How often it is looked whether the desk has been left alone. */
const idleLookMs = 5_000;

export async function openDeskSession(options: DeskSessionOptions): Promise<Result<DeskSession, AppError>> {
  const firstRows = whenFirstRowsAreOut();
  const foreground = new Foreground();
  const opened = await openStore(options, options.fleetFolder, {
    backUpAfter: firstRows.areDrawn,
    readSoldAfter: firstRows.areOut,
    foreground,
  });
  if (!opened.ok) return refuseStorage(opened.error);
  const context = new DeskContext(options, opened.value, foreground);
  await context.signIn.open(opened.value);
  let lastToday = context.today();
  let queue: Promise<unknown> = Promise.resolve();

  async function answerNow<Name extends ChannelName>(
    name: Name,
    input: ChannelInput<Name>,
  ): Answer<ChannelOutput<Name>> {
    try {
      context.signIn.lockWhenIdle();
      // What only reads may have been asked by the page of itself.
      if (channels[name].mutates || name === 'people:active') context.signIn.act();
      const refusal = judgeCall(name, atTheDesk(context));
      if (refusal !== null) return refuse(refusal.code, refusal.detail);
      if (waitsForTheSold(context, name, input)) await context.store.whole;
      if (!goesFirst.includes(name)) return await handlers[name](context, input);
      const isOver = foreground.begin();
      return await handlers[name](context, input).finally(isOver);
    } catch (error) {
      options.report(name, carriesSecret(name) ? withoutWords(error) : error);
      return refuse('unexpected');
    }
  }

  async function destroyOverdue(): Promise<void> {
    await destroyOverdueCodes(context).catch((error) => options.report('destroying codes', withoutWords(error)));
  }

  queue = destroyOverdue();
  const idleTimer = setInterval(() => context.signIn.lockWhenIdle(), idleLookMs).unref();

  return ok({
    answer: (name, input) => {
      if (name === 'lot:read') return answerNow(name, input).finally(firstRows.wereSent);
      if (!channels[name].mutates) return answerNow(name, input);
      const turn = queue.then(() => answerNow(name, input));
      queue = turn;
      return turn;
    },
    dayMayHaveChanged: () => {
      context.vault.lockWhenIdle();
      context.signIn.lockWhenIdle();
      if (context.today() === lastToday) return;
      lastToday = context.today();
      context.deps.emit('lot:all-changed', {});
      context.deps.emit('desk:changed', context.desk());
      queue = queue.then(destroyOverdue);
    },
    close: async () => {
      // Before the queue: a backup by hand in it waits for the first rows too.
      clearInterval(idleTimer);
      firstRows.giveUp();
      await queue;
      await context.signIn.close();
      await context.vault.close();
      await context.store.close();
    },
  });
}
