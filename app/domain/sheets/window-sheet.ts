// The readiness sheet for the windscreen: one page, large. Which vehicle, ready or not, its price where the shop wants it there, and in
// short what a buyer must be told. Nothing internal: no reason why it waits, no person, no supplier, no cost, no code.
import type { Fault } from '../diagnosis/fault.ts';
import type { Shop } from '../fleet/shop.ts';
import { type Cents, showCents } from '../shared/cents.ts';
import { vehicleTitle } from '../vehicle/identity.ts';
import type { VehicleReckoning } from '../vehicle/reckon.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { faultsToTell } from './readiness-sheet.ts';
import type { Sheet, SheetBlock } from './sheet.ts';
import { frameSheet, type Printing } from './sheet-frame.ts';
import { driveWords, joined, showOdometer } from './sheet-words.ts';

/** 'USD 14,273', the cents only where there are any. */
export function showPrice(cents: Cents, currency: string): string {
  return `${currency} ${showCents(cents).replace(/\.00$/, '')}`;
}

/**
 * Until it is ready it is marked as not for sale: in the United Kingdom an unroadworthy vehicle may not even be shown for sale (Road
 * Traffic Act 1988 s.75), elsewhere nobody should have to ask.
 */
function verdictWords(vehicle: Vehicle, isReady: boolean): string {
  if (vehicle.sale !== null) return 'Sold';
  return isReady ? 'Ready for sale' : 'Not for sale yet';
}

/** What it is and what became of it, without the shop's own reasons. */
function shortly({ what, decision, doneOn }: Fault): string {
  const clean = what.trim().replace(/[.;]+$/, '');
  if (doneOn !== null) return `${clean}: ${decision?.kind === 'replace' ? 'replaced' : 'repaired'}`;
  return `${clean}: ${decision?.kind === 'leave' ? 'left as it is' : 'not repaired yet'}`;
}

function vehicleLines({ identity }: Vehicle): string[] {
  const drive = identity.drive === 'combustion' ? '' : driveWords[identity.drive];
  const odometer = identity.odometer === null ? '' : showOdometer(identity.odometer);
  return [joined([odometer, drive, identity.colour])].filter((line) => line !== '');
}

function moreWords({ identity }: Vehicle, shop: Shop): string {
  const guide = shop.dealer.market === 'US' ? ' The Buyers Guide in this window tells the warranty.' : '';
  return `In full on the readiness sheet of ${identity.stockNumber}: ask for it.${guide}`;
}

/** The window sheet as the record stands on the reckoning's day. The asking price is on it only where the shop says so. */
export function windowSheet(vehicle: Vehicle, reckoning: VehicleReckoning, shop: Shop, printed: Printing): Sheet {
  const { isReady } = reckoning.readiness;
  const { identity, targets, sale } = vehicle;
  const isOffered = isReady && sale === null;
  const showsPrice = isOffered && shop.dealer.showsPriceInWindow && targets.askingCents !== null;
  const card: SheetBlock = {
    kind: 'window-card',
    number: identity.stockNumber,
    name: vehicleTitle(identity),
    lines: vehicleLines(vehicle),
    isGood: isOffered,
    verdict: verdictWords(vehicle, isReady),
    price: showsPrice ? showPrice(targets.askingCents ?? 0, shop.dealer.currency) : '',
    told: { title: 'Please note', items: faultsToTell(vehicle.faults).map(shortly) },
    more: moreWords(vehicle, shop),
  };
  const footer = 'As the record stands on the day of printing. No warranty and no inspection report.';
  return frameSheet('window-sheet', 'Window sheet', vehicle, shop, printed, { blocks: [card], footer });
}
