// The list of Waiting as rows of cells, the first being the head. Amounts in the main unit; none where the view holds none.
import type { WaitingView } from '../contract/waiting-view.ts';
import type { CsvCell } from '../domain/shared/csv.ts';

const kindWords = { part: 'part', code: 'code', sublet: 'sublet work' } as const;

const decidesWords = { alone: 'yes', together: 'together with others', not: 'no' } as const;

export function waitingTable({ lines, dayCents }: WaitingView): readonly (readonly CsvCell[])[] {
  const seesMoney = dayCents !== null;
  const amount = (cents: number | null) => (cents === null ? null : cents / 100);
  const moneyHead = seesMoney ? ['Another day of the vehicle', 'Share of this wait'] : [];
  return [
    [
      'Stock number',
      'Vehicle',
      'What',
      'Kind',
      'From',
      'Asked on',
      'Promised for',
      'Days waited',
      'Days overdue',
      'Expected on',
      'Expected at the latest (80 %)',
      'Earlier cases',
      'Chase on',
      'Why then',
      'Chased last',
      'Decides the day of the vehicle',
      ...moneyHead,
    ],
    ...lines.map((line): CsvCell[] => [
      line.stockNumber,
      line.title,
      line.what,
      kindWords[line.kind],
      line.provider,
      line.askedOn,
      line.promisedOn,
      line.waitedDays,
      line.overdueDays,
      line.expected.likelyOn,
      line.expected.safeOn,
      line.expected.cases,
      line.chaseOn,
      line.chaseWhy,
      line.lastChase?.chasedOn ?? null,
      decidesWords[line.decides],
      ...(seesMoney ? [amount(line.dayCents), amount(line.shareCents)] : []),
    ]),
  ];
}
