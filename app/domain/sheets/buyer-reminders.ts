// Reminders for the seller by market: what usually has to be told or shown. They remind; local law decides, and no list here is complete.
import { assertNever } from '../shared/assert-never.ts';
import type { Market } from '../vehicle/market.ts';
import { isOdometerExempt, odometerExemptFrom } from './odometer-statement.ts';
import type { SheetStep } from './sheet.ts';
import { openStep } from './sheet-words.ts';

export type ReminderSituation = { readonly modelYear: number | null; readonly transferYear: number };

const recallBlanks = ['looked up on', 'open recalls'] as const;

function odometerReminder({ modelYear, transferYear }: ReminderSituation): SheetStep {
  const heavy = 'Also exempt: gross weight rating over 16,000 lb, and vehicles that do not propel themselves.';
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
        'Both sides readable, from the moment the vehicle is offered. Back on after a test drive. The buyer gets it with the final warranty terms.',
    }),
    odometerReminder(situation),
    openStep('Open recalls looked up and told', {
      detail: 'Do not call the vehicle safe or inspected without saying plainly that a recall may be open.',
      blanks: recallBlanks,
    }),
    openStep('Earlier owner’s data cleared from the vehicle', {
      detail: 'Contacts, addresses, linked phones, garage codes, subscriptions. State law may ask for more.',
    }),
  ];
}

/**
 * Sources: Road Traffic Act 1988 s.75 (supplying, offering or exposing an unroadworthy vehicle for sale). Consumer Rights Act 2015
 * s.9 to 11 (satisfactory quality, fit for purpose, as described); section numbers of the latter from memory.
 */
function unitedKingdom(): SheetStep[] {
  return [
    openStep('Roadworthy before it is shown for sale', {
      detail:
        'An unroadworthy vehicle may not be sold, offered or put on show for sale. Until it is inspected, mark it as not for sale.',
    }),
    openStep('Described as it is', {
      detail: 'Faults told before the sale, in writing. The vehicle must match what was said about it.',
    }),
    openStep('Open recalls looked up and told', { blanks: recallBlanks }),
    openStep('Earlier owner’s data cleared from the vehicle'),
  ];
}

/** Common practice, no source: the questions that a buyer's law asks in some form in most places. */
function general(): SheetStep[] {
  return [
    openStep('Known faults told before the sale, in writing'),
    openStep('Odometer reading and its history told as known'),
    openStep('Roadworthiness and inspection papers as the law of the place asks'),
    openStep('Open recalls looked up and told', { blanks: recallBlanks }),
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
      return unitedKingdom();
    case 'CA':
    case 'MX':
    case 'CN':
    case 'EU':
    case 'other':
      return general();
    default:
      return assertNever(market, 'market');
  }
}
