// The history of the invented shop: vehicles sold in the fourteen months before the sample's today, made up by numbers from a seed. Each
// has a full record, so that forecasts have something to learn from.
import { addDays, type Day, dayNumber, laterDay } from '../../domain/shared/day.ts';
import { prove, signCleaned, signShown } from './closing-chapters.ts';
import { type ModelKey, models } from './makes-and-models.ts';
import { type Untold, untold } from './open-story.ts';
import { sampleToday, sources } from './sample-shop.ts';
import { type Random, seededRandom } from './seeded-random.ts';
import { airbagLamp, lockedGateway, lockedRadio, lostKeys } from './sold-codes.ts';
import { canHaveHighVoltage, highVoltage, paint, plainWork, transmission, windscreen } from './sold-plain-work.ts';
import { darkCluster, deadBody, engineMemory } from './sold-programming.ts';
import type { Trouble } from './sold-trouble.ts';
import { type Beginning, isFunded } from './take-in-of.ts';
import { ToldLater } from './told-later.ts';
import { salesDay, workingDay, workingDaysAfter } from './working-days.ts';

const seed = 20_260_318;
const vehicleCount = 66;
const firstBought = '2024-12-02';
const lastBought = '2026-01-26';
/** Two fewer than the lender allows. */
const workingDaysToPayOff = 3;
/** Nobody has written down the pay-off of what was sold since: it stands as overdue. */
const payOffNotedUntil = '2026-02-13';
const colours = ['white', 'black', 'silver', 'grey', 'blue', 'red', 'green', 'brown', 'beige'] as const;
const buyers = ['private buyer', 'private buyer', 'private buyer', 'returning customer', 'trades firm'] as const;

/** Loses about a seventh of its price a year and a little by the mile; rounded to 50. */
function retailValue(model: ModelKey, year: number, miles: number): number {
  const age = 2026 - year;
  const value = models[model].freshPrice * 0.87 ** age * (1 - Math.max(0, miles - 12_000 * age) / 400_000);
  return Math.round(value / 50) * 50;
}

function beginningOf(random: Random, boughtOn: Day): Beginning {
  const model = random.pick(Object.keys(models) as ModelKey[]);
  const year = random.whole(2014, 2021);
  const miles = Math.round(((2025.5 - year) * random.whole(8_500, 14_000)) / 100) * 100 + random.whole(0, 99);
  const retail = retailValue(model, year, miles);
  const price = Math.round((retail * (0.65 + random.unit() * 0.1)) / 50) * 50;
  const source = random.pick([
    sources.auction,
    sources.auction,
    sources.fleetAuction,
    sources.tradeIn,
    sources.privateSeller,
  ]);
  const isDriven = source === sources.tradeIn || source === sources.privateSeller;
  const arrivesBy = isDriven ? null : workingDay(addDays(boughtOn, random.whole(1, 4)));
  return {
    boughtOn,
    model,
    year,
    colour: random.pick(colours),
    miles,
    source,
    price,
    fees: source === sources.auction ? 385 : source === sources.fleetAuction ? 310 : isDriven ? 0 : 45,
    transport: isDriven ? 0 : random.pick([120, 160, 180, 240]),
    arrivesBy,
    paperBy: workingDay(addDays(boughtOn, 14)),
    keys: random.chance(0.3) ? 1 : 2,
    asking: Math.floor((retail + 900) / 100) * 100 + 95,
    budget: Math.round((price * 0.08) / 50) * 50 + 200,
    trade: Math.round((price * 0.95) / 50) * 50,
    // The year before, the plan paid for cheaper ones too.
    fundedFrom: 7_000,
    floor: Math.round((price * 0.06) / 50) * 50,
  };
}

const programmed = [deadBody, deadBody, deadBody, engineMemory, engineMemory, darkCluster, darkCluster] as const;
const coded = [lostKeys, lostKeys, lostKeys, lockedRadio, lockedRadio, lockedGateway, airbagLamp, airbagLamp] as const;
const sent = [paint, windscreen, windscreen, transmission] as const;

/** One or two things that went wrong, never two of the same. */
function troublesOf(random: Random, { model }: Beginning): readonly Trouble[] {
  const { drive } = models[model];
  const found: Trouble[] = [];
  const kind = random.unit();
  if (kind < 0.32) found.push(random.pick(programmed));
  else if (kind < 0.6) found.push(random.pick(coded));
  else if (kind < 0.75) found.push(canHaveHighVoltage(drive) ? highVoltage : random.pick(sent));
  // A battery-electric vehicle has neither plugs nor fuel vapour.
  const fits = plainWork.filter(({ shows }) => drive !== 'electric' || !shows.some((one) => one.startsWith('Engine')));
  if (found.length === 0 || random.chance(0.6)) found.push(random.pick(fits));
  if (random.chance(0.15)) found.push(random.pick([paint, windscreen]));
  return [...new Set(found)];
}

/** What several troubles show, one line a module. */
function shownBy(troubles: readonly Trouble[]): readonly string[] {
  const byModule = new Map<string, string>();
  for (const line of troubles.flatMap(({ shows }) => shows)) {
    const [name = '', found = ''] = line.split(': ');
    const before = byModule.get(name);
    const isSilent = found === 'silent' || before === 'silent';
    byModule.set(name, isSilent ? 'silent' : before ? `${before}, ${found}` : found);
  }
  return [...byModule].map(([name, found]) => `${name}: ${found}`);
}

function soldStory(random: Random, boughtOn: Day): { readonly story: Untold; readonly soldOn: Day } {
  const beginning = beginningOf(random, boughtOn);
  const troubles = troublesOf(random, beginning);
  const later = new ToldLater();
  const lateArrival = random.chance(0.2) ? random.whole(1, 6) : 0;
  const arrivedOn = beginning.arrivesBy ? workingDay(addDays(beginning.arrivesBy, lateArrival)) : boughtOn;
  const scannedOn = workingDaysAfter(arrivedOn, random.whole(0, 3));
  const place = `row ${random.pick(['A', 'B', 'C', 'D'])}`;
  later.at(arrivedOn, (story) => story.arrive(place, ''));
  const paperOn = workingDay(addDays(boughtOn, random.chance(0.8) ? random.whole(4, 15) : random.whole(16, 38)));
  later.at(laterDay(paperOn, arrivedOn), (story) => story.paper());
  later.at(scannedOn, (story) => story.scan('pre-repair', shownBy(troubles)));
  const ends = troubles.map((trouble) => trouble.plan(random, later, scannedOn));
  const finishedOn = ends.reduce(laterDay, scannedOn);
  const provenOn = workingDaysAfter(finishedOn, random.whole(0, 4));
  const cleanedOn = salesDay(addDays(provenOn, random.whole(0, 4)));
  const shownOn = salesDay(addDays(cleanedOn, random.whole(0, 3)));
  const readyOn = laterDay(shownOn, laterDay(paperOn, arrivedOn));
  const isLetGo = random.chance(0.06);
  const soldOn = salesDay(addDays(readyOn, isLetGo ? random.whole(25, 40) : 2 + Math.round(32 * random.unit() ** 1.7)));
  const asking = beginning.asking ?? 0;
  const price = isLetGo ? (beginning.trade ?? 0) : Math.round((asking * (0.955 + random.unit() * 0.045)) / 5) * 5;
  const buyer = isLetGo ? sources.auction : random.pick(buyers);
  later.at(provenOn, (story) => prove(story, provenOn));
  later.at(cleanedOn, (story) => signCleaned(story));
  later.at(shownOn, (story) => signShown(story));
  if (random.chance(0.4)) {
    const fuel = random.whole(18, 48);
    later.at(cleanedOn, (story) => story.pay('fuel and wash', fuel));
  }
  later.at(soldOn, (story) => {
    if (isLetGo) story.remark('Nobody wanted it at the price. Back to the trade.');
    story.sell(price, buyer);
  });
  const paidOn = workingDaysAfter(soldOn, workingDaysToPayOff);
  if (isFunded(beginning) && soldOn <= payOffNotedUntil) later.at(paidOn, (story) => story.payOff());
  return { story: untold(beginning, (story) => later.tell(story)), soldOn };
}

/** Vehicles whose sale would lie after the sample's today are left out: they were never bought. */
export function soldVehicles(): readonly Untold[] {
  const random = seededRandom(seed);
  const span = dayNumber(lastBought) - dayNumber(firstBought);
  const told: { readonly story: Untold; readonly soldOn: Day }[] = [];
  for (let index = 0; index < vehicleCount; index += 1) {
    const boughtOn = workingDay(
      addDays(firstBought, Math.round((span * index) / (vehicleCount - 1)) + random.whole(0, 3)),
    );
    told.push(soldStory(random, boughtOn));
  }
  return told.filter(({ soldOn }) => soldOn <= sampleToday).map(({ story }) => story);
}
