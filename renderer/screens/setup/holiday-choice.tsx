// Choosing public holidays: a place and a year, the list of its days, ticks. Adds nothing that nobody has ticked.
import './holiday-choice.css';
import { useEffect, useState } from 'react';
import type { NamedPlace, SuggestedHoliday } from '../../../app/contract/holiday-channels.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { ask } from '../../bridge.ts';
import { errorSentence } from '../../text/errors.ts';
import { holidayText as text } from '../../text/holidays.ts';
import { sayDay } from '../../text/say-day.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { SelectField } from '../../ui/select-field.tsx';

const yearsOffered = [-1, 0, 1, 2, 3] as const;

function usePlaces(country: string | null, isWanted: boolean): readonly NamedPlace[] {
  const [places, setPlaces] = useState<readonly NamedPlace[]>([]);
  useEffect(() => {
    setPlaces([]);
    if (!isWanted) return;
    let isGone = false;
    void ask('calendar:places', { country }).then((answer) => {
      if (!isGone && answer.ok) setPlaces(answer.value);
    });
    return () => {
      isGone = true;
    };
  }, [country, isWanted]);
  return places;
}

type Found = { readonly list: readonly SuggestedHoliday[] | null; readonly trouble: string };

function useHolidays(country: string, region: string, year: number): Found {
  const [found, setFound] = useState<Found>({ list: null, trouble: '' });
  useEffect(() => {
    setFound({ list: null, trouble: '' });
    if (country === '') return;
    let isGone = false;
    void ask('calendar:suggest-holidays', { country, region: region === '' ? null : region, year }).then((answer) => {
      if (isGone) return;
      setFound(answer.ok ? { list: answer.value, trouble: '' } : { list: null, trouble: errorSentence(answer.error) });
    });
    return () => {
      isGone = true;
    };
  }, [country, region, year]);
  return found;
}

export function HolidayChoice({
  today,
  kept,
  onAdd,
  onClose,
}: {
  readonly today: Day;
  readonly kept: readonly string[];
  readonly onAdd: (days: readonly Day[]) => void;
  readonly onClose: () => void;
}) {
  const thisYear = Number(today.slice(0, 4));
  const [country, setCountry] = useState('');
  const [region, setRegion] = useState('');
  const [year, setYear] = useState(thisYear);
  const [ticked, setTicked] = useState<ReadonlySet<Day>>(new Set());
  const countries = usePlaces(null, true);
  const regions = usePlaces(country, country !== '');
  const { list, trouble } = useHolidays(country, region, year);
  const tick = (days: readonly Day[], isOn: boolean) =>
    setTicked((before) => {
      const after = new Set(before);
      for (const day of days) {
        if (isOn) after.add(day);
        else after.delete(day);
      }
      return after;
    });
  const isKept = (day: Day) => kept.includes(day);
  return (
    <Dialog
      title={text.title}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{text.cancel}</Button>
          <Button
            kind="main"
            onPress={() => onAdd([...ticked].sort())}
            isDisabled={ticked.size === 0}
            whyDisabled={text.nothingTicked}
          >
            {text.add(ticked.size)}
          </Button>
        </>
      }
    >
      <p className="quiet">{text.hint}</p>
      <div className="field-grid">
        <SelectField
          label={text.country}
          value={country}
          onChange={(code: string) => {
            setCountry(code);
            setRegion('');
            setTicked(new Set());
          }}
          options={[
            { value: '', label: text.choose },
            ...countries.map(({ code, name }) => ({ value: code, label: name })),
          ]}
        />
        {regions.length > 0 && (
          <SelectField
            label={text.region}
            value={region}
            onChange={(code: string) => {
              setRegion(code);
              setTicked(new Set());
            }}
            options={[
              { value: '', label: text.wholeCountry },
              ...regions.map(({ code, name }) => ({ value: code, label: name })),
            ]}
          />
        )}
        <SelectField
          label={text.year}
          value={String(year)}
          onChange={(chosen: string) => setYear(Number(chosen))}
          options={yearsOffered.map((offset) => ({
            value: String(thisYear + offset),
            label: String(thisYear + offset),
          }))}
        />
      </div>
      {trouble !== '' && <p role="alert">{trouble}</p>}
      {country !== '' && trouble === '' && list === null && <p className="quiet">{text.reading}</p>}
      {list !== null && list.length === 0 && <p>{text.none}</p>}
      {list !== null && list.length > 0 && (
        <>
          <Button
            kind="quiet"
            onPress={() =>
              tick(
                list.filter(({ day, isPublic }) => isPublic && !isKept(day)).map(({ day }) => day),
                true,
              )
            }
          >
            {text.tickPublic}
          </Button>
          <ul className="holiday-list">
            {list.map(({ day, name, isPublic }) => (
              <li key={day}>
                <CheckField
                  label={`${sayDay(day, today)}: ${name}`}
                  value={ticked.has(day) || isKept(day)}
                  onChange={(isOn) => tick([day], isOn)}
                  isReadOnly={isKept(day)}
                />
                {(isKept(day) || !isPublic) && (
                  <span className="quiet">{isKept(day) ? text.isThere : text.notEverywhere}</span>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="quiet holiday-source">{text.source}</p>
    </Dialog>
  );
}
