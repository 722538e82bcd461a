// Reminders for the seller by market: what usually has to be told or shown. They remind; local law decides, and no list here is complete.
import { assertNever } from '../shared/assert-never.ts';
import type { Day } from '../shared/day.ts';
import { type DayForm, showDay } from '../shared/show-day.ts';
import type { Market } from '../vehicle/market.ts';
import { isOdometerExempt, odometerExemptFrom } from './odometer-statement.ts';
import type { SheetStep } from './sheet.ts';
import { openStep, sentence } from './sheet-words.ts';

export type ReminderSituation = {
  readonly modelYear: number | null;
  readonly transferYear: number;
  /** How the shop writes days. */
  readonly dayForm: DayForm;
  /** The shop pays tax on the margin. */
  readonly isMarginScheme: boolean;
  /** What the shop's own check of open recalls says; null while nobody has signed it. */
  readonly recallCheck: { readonly on: Day; readonly by: string; readonly note: string } | null;
};

const recallBlanks = ['looked up on', 'open recalls'] as const;

/** With the day of the shop's own check where it is signed; what was found then may have changed since. */
function recallReminder({ recallCheck, dayForm }: ReminderSituation, detail = ''): SheetStep {
  const found =
    recallCheck === null
      ? 'Not looked up yet, as far as the record says.'
      : sentence(
          `Looked up on ${showDay(recallCheck.on, dayForm)} by ${recallCheck.by}${recallCheck.note === '' ? '' : `: ${recallCheck.note}`}`,
        );
  return openStep('Open recalls looked up and told', { detail: `${found} ${detail}`.trim(), blanks: recallBlanks });
}

/**
 * Words on the invoice where the shop pays tax on its margin. Sources: HMRC, VAT margin scheme for second-hand vehicles (Notice 718/1;
 * De Voil V3.536 says since 1 October 2007); Directive 2006/112/EC Art. 226 point 14, from memory.
 */
function marginSchemeReminder({ isMarginScheme }: ReminderSituation): SheetStep[] {
  if (!isMarginScheme) return [];
  return [
    openStep('Invoice says that it is a margin scheme sale of a second-hand vehicle', {
      detail:
        'It shows no tax, and none of it may be reclaimed from it. Use the words that the law of the place asks for.',
    }),
  ];
}

function odometerReminder({ modelYear, transferYear }: ReminderSituation): SheetStep {
  const heavy =
    'Also exempt: gross weight rating over 16,000 lb, vehicles that do not propel themselves, and a first sale that is not for resale.';
  if (modelYear === null)
    return openStep('Odometer disclosure statement', {
      detail: `The model year is not recorded: find out whether the vehicle is exempt. ${heavy}`,
    });
  if (isOdometerExempt(modelYear, transferYear))
    return openStep('Odometer disclosure statement: exempt by age', {
      detail: `Model year ${modelYear} is exempt from ${odometerExemptFrom(modelYear)} on. The state may ask for one all the same.`,
    });
  return openStep('Odometer disclosure statement with the transfer', {
    detail: `Reading without tenths, and whether it is actual, beyond the mechanical limit, or not actual. Model year ${modelYear} is exempt from ${odometerExemptFrom(modelYear)} on. ${heavy}`,
  });
}

/**
 * Sources: Used Car Rule, 16 CFR 455 (Buyers Guide shown from the moment the vehicle is offered, both sides readable, handed over with
 * the final warranty, 455.2 and 455.3; dealers who offered more than five in twelve months). Odometer, 49 CFR 580.5 and 580.17. Recalls:
 * no federal ban on selling a used car with an open recall; FTC orders of January 2016 on claims such as "inspected". Personal data left
 * in a car: FTC guidance of August 2018.
 */
function unitedStates(situation: ReminderSituation): SheetStep[] {
  return [
    openStep('Buyers Guide on the vehicle', {
      detail:
        'Both sides readable, from the moment the vehicle is offered. Back on after a test drive. The buyer gets it with the final warranty terms, and the contract says that it is part of it.',
    }),
    odometerReminder(situation),
    recallReminder(
      situation,
      'Do not call the vehicle safe or inspected without saying plainly that a recall may be open.',
    ),
    openStep('Earlier owner’s data cleared from the vehicle', {
      detail: 'Contacts, addresses, linked phones, garage codes, subscriptions. State law may ask for more.',
    }),
  ];
}

/**
 * Sources: Road Traffic Act 1988 s.75 (supplying, offering or exposing an unroadworthy vehicle for sale). Consumer Rights Act 2015
 * s.9 to 11 (satisfactory quality, fit for purpose, as described); section numbers of the latter from memory.
 */
function unitedKingdom(situation: ReminderSituation): SheetStep[] {
  return [
    openStep('Roadworthy before it is shown for sale', {
      detail:
        'An unroadworthy vehicle may not be sold, offered or put on show for sale. Until it is inspected, mark it as not for sale.',
    }),
    openStep('Described as it is', {
      detail: 'Faults told before the sale, in writing. The vehicle must match what was said about it.',
    }),
    recallReminder(situation),
    ...marginSchemeReminder(situation),
    openStep('Earlier owner’s data cleared from the vehicle'),
  ];
}

/** Common practice, no source: the questions that a buyer's law asks in some form in most places. */
function general(situation: ReminderSituation): SheetStep[] {
  return [
    openStep('Known faults told before the sale, in writing'),
    openStep('Odometer reading and its history told as known'),
    openStep('Roadworthiness and inspection papers as the law of the place asks'),
    recallReminder(situation),
    ...marginSchemeReminder(situation),
    openStep('Earlier owner’s data cleared from the vehicle'),
  ];
}

export const remindersDefer =
  'Reminders only. The law of the place decides what a buyer must be told; ask where you are not sure.';

/** Boxes for the seller. `transferYear` is the calendar year of the sale, or of today while it is not sold. */
export function buyerReminders(market: Market, situation: ReminderSituation): readonly SheetStep[] {
  switch (market) {
    case 'US':
      return unitedStates(situation);
    case 'GB':
      return unitedKingdom(situation);
    case 'CA':
    case 'MX':
    case 'CN':
    case 'EU':
    case 'other':
      return general(situation);
    default:
      return assertNever(market, 'market');
  }
}
