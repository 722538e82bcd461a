// Labels and their values in two columns, as a description list.
import './facts.css';
import type { ReactNode } from 'react';
import { commonText } from '../text/common.ts';

export type FactsProps = {
  readonly rows: readonly {
    readonly label: string;
    /** Null or empty: shown as a dash. */
    readonly value: ReactNode;
    readonly isAmount?: boolean;
    readonly isStrong?: boolean;
    /** Where two rows carry the same label. */
    readonly key?: string;
  }[];
};

export function Facts({ rows }: FactsProps) {
  return (
    <dl className="facts">
      {rows.map(({ label, value, isAmount = false, isStrong = false, key = label }) => (
        <div key={key} className={`facts-row${isStrong ? ' is-strong' : ''}`}>
          <dt>{label}</dt>
          <dd className={isAmount ? 'amount' : undefined}>
            {value === null || value === '' ? commonText.none : value}
          </dd>
        </div>
      ))}
    </dl>
  );
}
