// The VIN while it is typed or scanned: cleaned on leaving, judged at once, corrections offered and never made in silence.
import './vin-field.css';
import type { Ref } from 'react';
import type { Market } from '../../app/domain/vehicle/market.ts';
import { cleanVin, readVin, type VinReading } from '../../app/domain/vehicle/vin.ts';
import { vinText } from '../text/vin.ts';
import { Button } from './button.tsx';
import { TextField } from './text-field.tsx';

/** 'WBA 3A5G59 DNP26082': maker, description, and the last eight that people search by (sections of ISO 3779). */
export function groupVin(vin: string): string {
  return vin.length === 17 ? `${vin.slice(0, 3)} ${vin.slice(3, 9)} ${vin.slice(9)}` : vin;
}

export type VinFieldProps = {
  readonly value: string;
  readonly onChange: (vin: string) => void;
  readonly reason: string;
  readonly onReasonChange: (reason: string) => void;
  readonly market: Market;
  readonly problem?: string | undefined;
  readonly reasonProblem?: string | undefined;
  /** A sentence about another vehicle that has this VIN; empty otherwise. */
  readonly taken?: string;
  readonly modelYear: number | null;
  readonly onModelYear: (year: number) => void;
  readonly inputRef?: Ref<HTMLInputElement>;
};

function Verdict({ reading }: { readonly reading: VinReading }) {
  const isTyping = reading.vin.length < 17;
  const isWhole = reading.checkDigit !== null;
  const facts = [
    isTyping ? vinText.count(reading.vin.length) : '',
    isWhole ? groupVin(reading.vin) : '',
    reading.checkDigit?.holds ? vinText.holds : '',
    reading.assignedIn === null ? '' : vinText.assignedIn(reading.assignedIn),
    reading.modelYears.length > 0 ? vinText.years(reading.modelYears) : '',
  ].filter((fact) => fact !== '');
  // Too short is no problem while it is being typed; anything else is said at once.
  const problems = reading.problems.filter((problem) => !(isTyping && problem.code === 'wrong-length'));
  return (
    <>
      <span className="code">{facts.join(' · ')}</span>
      {problems.map((problem) => (
        <span key={problem.code} className={`vin-problem is-${problem.severity}`}>
          {problem.sentence}
        </span>
      ))}
    </>
  );
}

export function VinField(props: VinFieldProps) {
  const { value, onChange, reason, onReasonChange, market, problem, reasonProblem, taken = '', inputRef } = props;
  const reading = value.trim() === '' ? null : readVin(value, { market });
  const years = reading?.modelYears.filter((year) => year !== props.modelYear) ?? [];
  // Not before it is owed: a missing VIN is asked for first.
  const isOwed = reading?.problems.some((found) => found.severity === 'override') ?? false;
  const showsReason = reason !== '' || isOwed || (problem !== undefined && problem !== '');
  return (
    <>
      <TextField
        label={vinText.label}
        value={value}
        onChange={onChange}
        onCommit={(typed) => onChange(cleanVin(typed))}
        problem={taken === '' ? problem : taken}
        hint={
          reading === null ? undefined : (
            <span className="vin-reading">
              <Verdict reading={reading} />
            </span>
          )
        }
        code
        isWide
        {...(inputRef ? { inputRef } : {})}
      />
      {((reading?.offers.length ?? 0) > 0 || years.length > 0) && (
        <div className="vin-offers">
          {reading?.offers.map((offer) => (
            <span key={offer.code}>
              {offer.sentence} <Button onPress={() => onChange(offer.vin)}>{vinText.use(offer.vin)}</Button>
            </span>
          ))}
          {years.map((year) => (
            <Button key={year} onPress={() => props.onModelYear(year)}>
              {vinText.takeYear(year)}
            </Button>
          ))}
        </div>
      )}
      {showsReason && (
        <TextField
          label={vinText.reason}
          value={reason}
          onChange={onReasonChange}
          problem={reasonProblem}
          hint={vinText.reasonHint}
          isWide
        />
      )}
    </>
  );
}
