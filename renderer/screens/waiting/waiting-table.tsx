// The list of Waiting as one table, plain or with a head line for each provider. Long lists draw their beginning; the rest on request.
import { type KeyboardEvent, type MouseEvent, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { ProviderTurnaround, WaitingLineView } from '../../../app/contract/waiting-view.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { holdKey } from '../../state/held-key.ts';
import { useStore } from '../../state/store.ts';
import { waitingText as text } from '../../text/waiting.ts';
import { Button } from '../../ui/button.tsx';
import { indexAfterKey } from '../../ui/row-keys.ts';
import { openLine, rowElementId, WaitingRow } from './waiting-row.tsx';
import { byProvider, changeWaitingLook, keyOf, type ProviderGroup, waitingLookStore } from './waiting-view.ts';

/** Lines drawn at first, and with each press of the button. */
const drawnAtOnce = 200;

function GroupHead({
  group,
  turnaround,
  today,
  columns,
}: {
  readonly group: ProviderGroup;
  readonly turnaround: readonly ProviderTurnaround[];
  readonly today: Day;
  readonly columns: number;
}) {
  const { provider, lines, vehicles, chaseOn } = group;
  const facts = [
    text.provider(lines.length, vehicles),
    ...(chaseOn === null ? [] : [text.providerChase(chaseOn, today)]),
    ...turnaround
      .filter((one) => one.provider.toLowerCase() === provider.toLowerCase())
      .map((one) => `${text.turnaroundFor(one.kind, one.codeKind)} ${text.turnaround(one)}`),
  ];
  return (
    <tr className="waiting-group">
      <th scope="rowgroup" colSpan={columns}>
        {provider === '' ? text.nobody : provider} <span>{facts.join(' · ')}</span>
      </th>
    </tr>
  );
}

export type WaitingTableProps = {
  readonly lines: readonly WaitingLineView[];
  readonly turnaround: readonly ProviderTurnaround[];
  readonly today: Day;
  readonly seesMoney: boolean;
  readonly mayChase: (line: WaitingLineView) => boolean;
  readonly onChase: (line: WaitingLineView) => void;
};

export function WaitingTable({ lines, turnaround, today, seesMoney, mayChase, onChase }: WaitingTableProps) {
  const { by, cursorKey } = useStore(waitingLookStore);
  const [limit, setLimit] = useState(drawnAtOnce);
  const table = useRef<HTMLTableElement>(null);
  const groups = useMemo(() => (by === 'provider' ? byProvider(lines) : null), [by, lines]);
  const ordered = useMemo(() => groups?.flatMap((group) => group.lines) ?? lines, [groups, lines]);
  const drawn = ordered.slice(0, limit);
  const cursorIndex = Math.max(
    0,
    drawn.findIndex((line) => keyOf(line) === cursorKey),
  );
  const columns = seesMoney ? 8 : 7;
  const focusLine = (line: WaitingLineView | undefined) => {
    if (line) document.getElementById(rowElementId(keyOf(line)))?.focus();
  };

  // Coming back from a vehicle, and when the line with the focus moved or left: the cursor has it again.
  const hadFocus = useRef(false);
  useLayoutEffect(() => {
    const focused = document.activeElement;
    const isLost = focused === null || focused === document.body || focused.id === 'screen';
    if (isLost && (hadFocus.current || waitingLookStore.read().cursorKey !== null)) focusLine(drawn[cursorIndex]);
  });
  useEffect(() => {
    const element = table.current;
    const note = () => {
      hadFocus.current = element?.contains(document.activeElement) ?? false;
    };
    document.addEventListener('focusin', note);
    return () => document.removeEventListener('focusin', note);
  }, []);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey || !(event.target instanceof HTMLElement)) return;
    const line = drawn[cursorIndex];
    if (event.key.toLowerCase() === 'c' && line && mayChase(line)) {
      event.preventDefault();
      holdKey(() => onChase(line));
      return;
    }
    const index =
      event.target instanceof HTMLAnchorElement ? indexAfterKey(event.key, cursorIndex, drawn.length) : null;
    if (index === null) return;
    event.preventDefault();
    focusLine(drawn[index]);
  };
  const onClick = (event: MouseEvent) => {
    if (!(event.target instanceof Element) || event.target.closest('button') !== null) return;
    const key = event.target.closest<HTMLElement>('tr[data-key]')?.dataset.key;
    const line = drawn.find((one) => keyOf(one) === key);
    // Text that is being marked to be copied is no wish to open anything.
    if (line && document.getSelection()?.isCollapsed !== false) openLine(line);
  };

  const rowOf = (line: WaitingLineView) => (
    <WaitingRow
      key={keyOf(line)}
      line={line}
      today={today}
      isCursor={line === drawn[cursorIndex]}
      seesMoney={seesMoney}
      mayChase={mayChase(line)}
      onChase={onChase}
    />
  );
  const isDrawn = new Set(drawn);
  return (
    <>
      <table ref={table} className="waiting-table" onKeyDown={onKeyDown} onClick={onClick}>
        <caption className="unseen">{text.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{text.columns.vehicle}</th>
            <th scope="col">{text.columns.what}</th>
            <th scope="col">{text.columns.since}</th>
            <th scope="col">{text.columns.promised}</th>
            <th scope="col">{text.columns.expected}</th>
            <th scope="col">{text.columns.chase}</th>
            <th scope="col">{text.columns.holds}</th>
            {seesMoney && (
              <th scope="col" className="amount">
                {text.columns.cost}
              </th>
            )}
          </tr>
        </thead>
        {groups === null ? (
          <tbody>{drawn.map(rowOf)}</tbody>
        ) : (
          groups
            .filter((group) => group.lines.some((line) => isDrawn.has(line)))
            .map((group) => (
              <tbody key={group.key}>
                <GroupHead group={group} turnaround={turnaround} today={today} columns={columns} />
                {group.lines.filter((line) => isDrawn.has(line)).map(rowOf)}
              </tbody>
            ))
        )}
      </table>
      {ordered.length > drawn.length && (
        <Button
          onPress={() => {
            changeWaitingLook({ cursorKey: cursorKey ?? null });
            setLimit(limit + drawnAtOnce);
          }}
        >
          {text.more(ordered.length - drawn.length)}
        </Button>
      )}
    </>
  );
}
