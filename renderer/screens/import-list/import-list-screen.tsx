// Taking in a purchase list: choose or drop the file, look at the columns, see what stands against each row, take the good ones in.
import './import-list.css';
import { type DragEvent, useRef, useState } from 'react';
import { ask } from '../../bridge.ts';
import { takeDesk, undo, useDesk } from '../../state/desk-store.ts';
import { notify } from '../../state/notice-store.ts';
import { goTo } from '../../state/route-store.ts';
import { useStore } from '../../state/store.ts';
import { errorSentence } from '../../text/errors.ts';
import { importListText as text } from '../../text/import-list.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { DayField } from '../../ui/day-field.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { SectionHead } from '../../ui/section-head.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { ColumnTable } from './column-table.tsx';
import {
  changeReading,
  chosenRows,
  closeList,
  listStore,
  listTroubleStore,
  type OpenList,
  openList,
} from './list-store.ts';
import { RowTable } from './row-table.tsx';

function FileChoice({ label }: { readonly label: string }) {
  const unit = useDesk().shop?.dealer.distanceUnit ?? 'mi';
  const input = useRef<HTMLInputElement>(null);
  const take = (file: File | undefined) => {
    if (file !== undefined) void openList(file, unit);
  };
  const onDrop = (event: DragEvent) => {
    event.preventDefault();
    take(event.dataTransfer.files[0]);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping a file is a second way beside the button in it.
    <div className="list-drop" onDragOver={(event) => event.preventDefault()} onDrop={onDrop}>
      <Button onPress={() => input.current?.click()}>{label}</Button> <span className="quiet">{text.orDrop}</span>
      <input
        ref={input}
        className="unseen"
        type="file"
        tabIndex={-1}
        aria-label={text.choose}
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        onChange={(event) => {
          take(event.currentTarget.files?.[0]);
          event.currentTarget.value = '';
        }}
      />
    </div>
  );
}

function Rest({ list }: { readonly list: OpenList }) {
  const { today } = useDesk();
  const { reading } = list;
  return (
    <>
      <SectionHead title={text.rest} />
      <div className="field-grid list-rest">
        <DayField
          label={text.boughtOn}
          value={reading.boughtOn}
          today={today}
          onChange={(boughtOn) => changeReading({ boughtOn })}
        />
        <SelectField
          label={text.odometerUnit}
          value={reading.odometerUnit}
          options={[
            { value: 'km', label: 'km' },
            { value: 'mi', label: 'mi' },
          ]}
          onChange={(odometerUnit) => changeReading({ odometerUnit })}
        />
        <TextField
          label={text.vinReason}
          hint={text.vinReasonHint}
          value={reading.vinReason}
          onChange={(vinReason) => changeReading({ vinReason })}
          isWide
        />
        <CheckField
          label={text.numbersStock}
          value={reading.numbersStock}
          onChange={(numbersStock) => changeReading({ numbersStock })}
        />
      </div>
    </>
  );
}

type Left = { readonly row: number; readonly stockNumber: string; readonly sentence: string };
type Done = { readonly taken: readonly string[]; readonly left: readonly Left[] };

function NotTakenIn({ done }: { readonly done: Done }) {
  return (
    <section role="alert" aria-labelledby="list-left">
      <SectionHead id="list-left" title={text.leftTitle} count={done.left.length} />
      <p>{text.left(done.left.length, done.taken)}</p>
      <ul className="list-left">
        {done.left.map(({ row, stockNumber, sentence }) => (
          <li key={row}>
            <b>
              {text.row} {row + 1} {stockNumber}
            </b>{' '}
            {sentence}
          </li>
        ))}
      </ul>
      <Button onPress={() => goTo({ screen: 'lot' })}>{text.toLot}</Button>
    </section>
  );
}

function TheList({ list, onDone }: { readonly list: OpenList; readonly onDone: (done: Done | null) => void }) {
  const [isTaking, setIsTaking] = useState(false);
  const { look, fileName, encoding } = list;
  const rows = chosenRows(list);
  const takeIn = async () => {
    setIsTaking(true);
    const answer = await ask('list:take-in', { text: list.text, reading: list.reading, rows });
    setIsTaking(false);
    if (!answer.ok) return notify('problem', errorSentence(answer.error));
    const { taken, left, desk } = answer.value;
    takeDesk(desk, new Date().toISOString());
    if (taken.length > 0) notify('done', text.taken(taken.length), { label: text.undo, onPress: () => void undo() });
    closeList();
    if (left.length === 0) return goTo({ screen: 'lot' });
    onDone({ taken: taken.map(({ stockNumber }) => stockNumber), left });
  };
  return (
    <>
      <p className="list-about">
        {text.about(fileName, look.rowCount, encoding, look.separator)} {look.isRemembered && text.remembered}
      </p>
      <SectionHead title={text.columns} />
      <ColumnTable list={list} />
      <Rest list={list} />
      <RowTable list={list} />
      <div className="list-foot">
        <Button
          kind="main"
          isDisabled={rows.length === 0 || isTaking}
          whyDisabled={isTaking ? text.taking(rows.length) : text.nothingChosen}
          onPress={() => void takeIn()}
        >
          {isTaking ? text.taking(rows.length) : text.takeIn(rows.length)}
        </Button>
      </div>
    </>
  );
}

export function ImportListScreen() {
  const desk = useDesk();
  const list = useStore(listStore);
  const trouble = useStore(listTroubleStore);
  const [done, setDone] = useState<Done | null>(null);
  if (desk.person.role !== 'manager') return <EmptyState sentence={text.onlyManager} />;
  if (desk.readOnlyReason !== null) return <EmptyState sentence={text.readOnly} />;
  return (
    <div className="import-list">
      <div className="list-title">
        <h1>{text.title}</h1>
        <Button kind="quiet" onPress={() => goTo({ screen: 'take-in' })}>
          {text.takeInOne}
        </Button>
      </div>
      <ScreenPurpose screen="import-list" />
      <FileChoice label={list === null ? text.choose : text.another} />
      {trouble !== '' && (
        <p className="list-trouble" role="alert">
          {trouble}
        </p>
      )}
      {done !== null && list === null && <NotTakenIn done={done} />}
      {list !== null && <TheList list={list} onDone={setDone} />}
    </div>
  );
}
