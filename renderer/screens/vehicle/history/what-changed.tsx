// What changed on this vehicle, newest first. Read when it is opened, page by page; changes nothing.
import './history.css';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { HistoryView } from '../../../../app/contract/history-view.ts';
import { ask } from '../../../bridge.ts';
import { errorSentence } from '../../../text/errors.ts';
import { historyText as text } from '../../../text/history.ts';
import { showMoment } from '../../../text/instant.ts';
import { Button } from '../../../ui/button.tsx';
import { useVehicle } from '../page/vehicle-context.ts';

function Line({ line }: { readonly line: HistoryView['lines'][number] }) {
  return (
    <li className={line.wasSaved ? undefined : 'history-unsaved'}>
      <p>
        <time dateTime={line.at}>{showMoment(line.at)}</time> <b>{line.by}</b> {text.what(line.what)}
      </p>
      {line.reason !== '' && <p className="quiet">{text.reason(line.reason)}</p>}
      {!line.wasSaved && <p className="quiet">{text.notSaved}</p>}
      {line.changes.length > 0 && (
        <ul>
          {line.changes.map((change, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line of history never changes.
            <li key={index}>
              {text.what(change.what)} <span className="quiet">{text.change(change.from, change.to)}</span>
            </li>
          ))}
        </ul>
      )}
      {line.isShortened && <p className="quiet">{text.shortened}</p>}
    </li>
  );
}

export function WhatChanged() {
  const { id, view } = useVehicle();
  const [isOpen, setIsOpen] = useState(false);
  const [pages, setPages] = useState<readonly HistoryView[]>([]);
  const [problem, setProblem] = useState('');
  const turn = useRef(0);
  const read = useCallback(
    async (earlier: readonly HistoryView[]) => {
      turn.current += 1;
      const mine = turn.current;
      const answer = await ask('vehicle:history', { id, place: earlier.at(-1)?.older ?? null });
      if (mine !== turn.current) return;
      setProblem(answer.ok ? '' : errorSentence(answer.error));
      if (answer.ok) setPages([...earlier, answer.value]);
    },
    [id],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: read anew when the vehicle was changed.
  useEffect(() => {
    if (isOpen) void read([]);
  }, [isOpen, read, view.revision]);
  const lines = pages.flatMap((page) => page.lines);
  const last = pages.at(-1);
  return (
    <details className="history" onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>{text.title}</summary>
      {problem !== '' && <p role="alert">{problem}</p>}
      {last === undefined && problem === '' && <p role="status">{text.reading}</p>}
      {last !== undefined && lines.length === 0 && last.older === null && <p className="quiet">{text.none}</p>}
      {[...new Set(pages.flatMap((page) => page.faults))].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <ol>
        {lines.map((line, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines are only added at the end.
          <Line key={index} line={line} />
        ))}
      </ol>
      {last?.older && <Button onPress={() => void read(pages)}>{text.older}</Button>}
      {last?.older === null && pages.length > 1 && (
        <p className="quiet" role="status">
          {text.noOlder}
        </p>
      )}
    </details>
  );
}
