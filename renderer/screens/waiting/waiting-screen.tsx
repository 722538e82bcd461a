// Waiting: every part, code and sublet work asked for and not here, by what another day of it costs, with the next day to chase.
import './waiting.css';
import { useCallback, useState } from 'react';
import type { WaitingLineView, WaitingView } from '../../../app/contract/waiting-view.ts';
import { ask } from '../../bridge.ts';
import { useDesk } from '../../state/desk-store.ts';
import { notify } from '../../state/notice-store.ts';
import { listOfKind } from '../../state/record-chase.ts';
import { rightsHere } from '../../state/rights-here.ts';
import { useStore } from '../../state/store.ts';
import { useReading } from '../../state/use-reading.ts';
import { errorSentence } from '../../text/errors.ts';
import { waitingText as text } from '../../text/waiting.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyFleet, useIsFleetEmpty } from '../../ui/empty-fleet.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { LiveRegion } from '../../ui/live-region.tsx';
import { ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { ChaseDialog } from './chase-dialog.tsx';
import { HowLong } from './how-long.tsx';
import { WaitingTable } from './waiting-table.tsx';
import { changeWaitingLook, waitingLookStore } from './waiting-view.ts';

async function save(seesMoney: boolean): Promise<void> {
  const answer = await ask('waiting:export', {});
  if (!answer.ok) notify('problem', errorSentence(answer.error));
  else if (!seesMoney) notify('done', text.saved(answer.value.fileName));
  else
    notify('done', text.saved(answer.value.fileName), {
      label: text.showFolder,
      onPress: () => void ask('money:show-folder', {}),
    });
}

function Look() {
  const { by } = useStore(waitingLookStore);
  return (
    <fieldset className="waiting-look">
      <legend className="unseen">{text.views}</legend>
      <Button isPressed={by === 'cost'} onPress={() => changeWaitingLook({ by: 'cost' })}>
        {text.byCost}
      </Button>
      <Button isPressed={by === 'provider'} onPress={() => changeWaitingLook({ by: 'provider' })}>
        {text.byProvider}
      </Button>
    </fieldset>
  );
}

function List({ view }: { readonly view: WaitingView }) {
  const desk = useDesk();
  const { today, seesMoney, person, readOnlyReason } = desk;
  const isEmpty = useIsFleetEmpty();
  const [chased, setChased] = useState<WaitingLineView | null>(null);
  const onChase = useCallback((line: WaitingLineView) => setChased(line), []);
  const { puts } = rightsHere(person.role);
  const mayChase = (line: WaitingLineView) => readOnlyReason === null && puts.includes(listOfKind[line.kind]);
  const found = text.found(view.lines.length, view.vehicles);
  const due = view.lines.filter(({ chaseOn }) => chaseOn <= today).length;
  const sentences = [found, text.toChase(due), text.money(view, desk.shop?.dealer.currency ?? '')];
  if (view.lines.length === 0) return isEmpty ? <EmptyFleet /> : <EmptyState sentence={text.nothing} />;
  return (
    <>
      <div className="waiting-tools">
        <p>
          <b>{sentences[0]}</b> {sentences.slice(1).join(' ')}
        </p>
        <Look />
        <Button onPress={() => void save(seesMoney)}>{text.save}</Button>
      </div>
      <LiveRegion text={found} />
      <p className="waiting-hint">{seesMoney ? text.howOrdered : text.howOrderedWithoutMoney}</p>
      <WaitingTable
        lines={view.lines}
        turnaround={view.turnaround}
        today={today}
        seesMoney={seesMoney}
        mayChase={mayChase}
        onChase={onChase}
      />
      <HowLong turnaround={view.turnaround} />
      {chased !== null && (
        <ChaseDialog line={chased} today={today} personId={person.id} onClose={() => setChased(null)} />
      )}
    </>
  );
}

export function WaitingScreen() {
  const isAllowed = useDesk().person.role !== 'sales';
  const { known, readAgain } = useReading('waiting:read', isAllowed);
  return (
    <div className="waiting-screen">
      <h1>{text.title}</h1>
      <ScreenPurpose screen="waiting" />
      {!isAllowed ? (
        <EmptyState sentence={text.onlyWorkshop} />
      ) : known.state === 'failed' ? (
        <div role="alert">
          <EmptyState sentence={known.sentence} action={<Button onPress={readAgain}>{text.tryAgain}</Button>} />
        </div>
      ) : known.state === 'reading' ? (
        <p className="quiet">{text.reading}</p>
      ) : (
        <List view={known.view} />
      )}
    </div>
  );
}
