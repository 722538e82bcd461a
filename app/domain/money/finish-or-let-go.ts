// Weighs finishing and retailing a vehicle against selling it to the trade now. Works from figures passed in; guesses none of them.
import { type Cents, checkCents, roundToCents, sumCents } from '../shared/cents.ts';
import { addDays, type Day, daysBetween, laterDay } from '../shared/day.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import type { CostOfDays } from './further-holding.ts';
import { marginTax, type SaleTax } from './margin-tax.ts';

export type FinishOrLetGoInputs = {
  readonly today: Day;
  /** Spent so far, purchase and holding included. The same either way. */
  readonly spentCents: Cents;
  /** For tax on the margin: what was paid to get the vehicle, no repairs. */
  readonly purchaseCents: Cents;
  readonly tax: SaleTax;
  /** Cost of further days from today, and what the asking price loses in them; null when the shop keeps no such curve. */
  readonly holding: CostOfDays;
  readonly valueLost: CostOfDays | null;
  readonly finish: {
    readonly askingCents: Cents | null;
    readonly readyOn: Day | null;
    /** From ready to sold. */
    readonly daysToSell: number | null;
    /** Ordered or agreed, and still to come; work that has no amount yet is named in `withoutAmount`. */
    readonly committedCents: Cents;
    readonly toComeCents: Cents;
    readonly withoutAmount: readonly string[];
    readonly sellingCents: Cents | null;
  };
  readonly letGo: {
    readonly tradeCents: Cents | null;
    /** From today to the day the vehicle is off the lot. */
    readonly daysToGo: number | null;
    /** Of what is committed, what is owed all the same. */
    readonly committedCents: Cents;
    readonly sellingCents: Cents | null;
  };
};

export type MissingInput = { readonly what: string; readonly sentence: string };

export type Way = {
  /** The day it is sold. */
  readonly on: Day;
  /** The price first, then what comes off it, as negative amounts; their sum is the result. */
  readonly lines: readonly { readonly what: string; readonly cents: Cents }[];
  readonly resultCents: Cents;
};

export type Verdict = 'finish' | 'let-go' | 'even';

export type WhatIf = {
  readonly askingPercent: -5 | 0 | 5;
  /** Ready days earlier or later; never earlier than today, so `readyOn` may move by less. */
  readonly readyDays: -7 | 0 | 7;
  readonly readyOn: Day;
  readonly resultCents: Cents;
  readonly advantageCents: Cents;
  readonly verdict: Verdict;
};

export type FinishOrLetGo = {
  readonly finish: Way;
  readonly letGo: Way;
  /** By how much finishing comes out above letting go; negative when letting go does. */
  readonly advantageCents: Cents;
  readonly verdict: Verdict;
  /** What may still be spent on top before letting go is better; negative: what would have to be saved for finishing to be even. */
  readonly spendRoomCents: Cents;
  /**
   * How many days later than forecast it may be ready before letting go is better; 0 when it is already; null when no number of days
   * within ten years turns the answer.
   */
  readonly daysRoom: number | null;
  /** The latest ready day on which finishing is not worse; null with `daysRoom` null or when letting go is already better. */
  readonly readyByOn: Day | null;
  /** Three asking prices by three ready days. */
  readonly whatIfs: readonly WhatIf[];
};

const longestDelay = 3650;

type Known = {
  readonly askingCents: Cents;
  readonly readyOn: Day;
  readonly daysToSell: number;
  readonly sellingCents: Cents;
  readonly tradeCents: Cents;
  readonly daysToGo: number;
  readonly tradeSellingCents: Cents;
};

function known({ finish, letGo }: FinishOrLetGoInputs): Result<Known, readonly MissingInput[]> {
  const missing: MissingInput[] = [];
  const ask = (what: string, sentence: string) => missing.push({ what, sentence });
  if (finish.askingCents === null) ask('asking price', 'Enter the asking price.');
  if (finish.readyOn === null)
    ask('ready day', 'No day can be forecast yet: decide the open faults and order what they need.');
  if (finish.daysToSell === null) ask('days to sell', 'Enter how many days a ready vehicle stands before it is sold.');
  if (finish.sellingCents === null) ask('cost of selling', 'Enter what selling to a retail buyer costs, 0 if nothing.');
  for (const what of finish.withoutAmount) ask(what, `Enter an amount: ${what}.`);
  if (letGo.tradeCents === null) ask('trade value', 'Enter what the trade would pay for it today as it stands.');
  if (letGo.daysToGo === null) ask('days to the trade', 'Enter how many days a sale to the trade takes.');
  if (letGo.sellingCents === null)
    ask('cost of the trade sale', 'Enter what selling to the trade costs, 0 if nothing.');
  const { askingCents, readyOn, daysToSell, sellingCents } = finish;
  const { tradeCents, daysToGo, sellingCents: tradeSellingCents } = letGo;
  const isWhole =
    missing.length === 0 &&
    askingCents !== null &&
    readyOn !== null &&
    daysToSell !== null &&
    sellingCents !== null &&
    tradeCents !== null &&
    daysToGo !== null &&
    tradeSellingCents !== null;
  return isWhole
    ? ok({ askingCents, readyOn, daysToSell, sellingCents, tradeCents, daysToGo, tradeSellingCents })
    : fail(missing);
}

function wayOf(on: Day, lines: readonly { readonly what: string; readonly cents: Cents }[]): Way {
  const kept = lines
    .filter((line, at) => at === 0 || line.cents !== 0)
    .map(({ what, cents }) => ({ what, cents: checkCents(cents) }));
  return { on, lines: kept, resultCents: sumCents(kept.map(({ cents }) => cents)) };
}

function finishing(inputs: FinishOrLetGoInputs, of: Known, askingCents: Cents, readyOn: Day): Way {
  const on = addDays(laterDay(readyOn, inputs.today), of.daysToSell);
  const furtherDays = daysBetween(inputs.today, on);
  const lostCents = inputs.valueLost === null ? 0 : inputs.valueLost(furtherDays);
  const { taxCents } = marginTax(inputs.tax, {
    sellingCents: askingCents - lostCents,
    purchaseCents: inputs.purchaseCents,
  });
  return wayOf(on, [
    { what: 'Asking price', cents: askingCents },
    { what: 'Value lost until then', cents: -lostCents },
    { what: 'Spent so far', cents: -inputs.spentCents },
    { what: 'Ordered or agreed', cents: -inputs.finish.committedCents },
    { what: 'Still to come', cents: -inputs.finish.toComeCents },
    { what: `Holding for ${furtherDays} more days`, cents: -inputs.holding(furtherDays) },
    { what: 'Cost of selling', cents: -of.sellingCents },
    { what: 'Tax on the margin', cents: -taxCents },
  ]);
}

function lettingGo(inputs: FinishOrLetGoInputs, of: Known): Way {
  const { taxCents } = marginTax(inputs.tax, { sellingCents: of.tradeCents, purchaseCents: inputs.purchaseCents });
  return wayOf(addDays(inputs.today, of.daysToGo), [
    { what: 'Trade value', cents: of.tradeCents },
    { what: 'Spent so far', cents: -inputs.spentCents },
    { what: 'Ordered or agreed, owed all the same', cents: -inputs.letGo.committedCents },
    { what: `Holding for ${of.daysToGo} more days`, cents: -inputs.holding(of.daysToGo) },
    { what: 'Cost of the trade sale', cents: -of.tradeSellingCents },
    { what: 'Tax on the margin', cents: -taxCents },
  ]);
}

function verdictOf(advantageCents: Cents): Verdict {
  return advantageCents > 0 ? 'finish' : advantageCents < 0 ? 'let-go' : 'even';
}

/** The most days of delay that keep the advantage from going negative; advantage never rises with delay, so halving finds it. */
function mostDelay(advantageAfter: (days: number) => Cents): number | null {
  if (advantageAfter(0) < 0) return 0;
  if (advantageAfter(longestDelay) >= 0) return null;
  let low = 0;
  let high = longestDelay;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (advantageAfter(middle) >= 0) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Expected results of both ways and how far the answer stands from turning, all in cents and whole days. `holding` and `valueLost` must
 * not fall with more days. What is spent counts in both, so it never decides. Own definition ("common practice, no source"); tax as in
 * margin-tax.ts. Fails with every input that is missing, each with what to do; then nothing is reckoned.
 */
export function finishOrLetGo(inputs: FinishOrLetGoInputs): Result<FinishOrLetGo, readonly MissingInput[]> {
  const complete = known(inputs);
  if (!complete.ok) return complete;
  const of = complete.value;
  const letGo = lettingGo(inputs, of);
  const finish = finishing(inputs, of, of.askingCents, of.readyOn);
  const readyOn = laterDay(of.readyOn, inputs.today);
  const advantageCents = finish.resultCents - letGo.resultCents;
  const daysRoom = mostDelay(
    (days) => finishing(inputs, of, of.askingCents, addDays(readyOn, days)).resultCents - letGo.resultCents,
  );
  const whatIfs = ([-5, 0, 5] as const).flatMap((askingPercent) =>
    ([-7, 0, 7] as const).map((readyDays): WhatIf => {
      const askingCents = roundToCents(BigInt(of.askingCents) * BigInt(100 + askingPercent), 100n);
      const movedTo = laterDay(addDays(readyOn, readyDays), inputs.today);
      const { resultCents } = finishing(inputs, of, askingCents, movedTo);
      const advantage = resultCents - letGo.resultCents;
      return {
        askingPercent,
        readyDays,
        readyOn: movedTo,
        resultCents,
        advantageCents: advantage,
        verdict: verdictOf(advantage),
      };
    }),
  );
  return ok({
    finish,
    letGo,
    advantageCents,
    verdict: verdictOf(advantageCents),
    spendRoomCents: advantageCents,
    daysRoom,
    readyByOn: daysRoom === null || advantageCents < 0 ? null : addDays(readyOn, daysRoom),
    whatIfs,
  });
}
