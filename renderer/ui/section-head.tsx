// The head of a section: its name, how many entries it holds, at most one action at its right.
import './section-head.css';
import type { ReactNode } from 'react';

export type SectionHeadProps = {
  readonly title: string;
  readonly count?: number | undefined;
  readonly action?: ReactNode;
  /** For aria-labelledby of the section. */
  readonly id?: string;
  readonly level?: 2 | 3;
  /** Beside the title, quiet: a sum, a state. */
  readonly aside?: ReactNode;
};

export function SectionHead({ title, count, action, id, level = 2, aside }: SectionHeadProps) {
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <div className="section-head">
      <Heading id={id} className="section-title">
        {title}
        {count !== undefined && <span className="section-count"> {count}</span>}
      </Heading>
      {aside !== undefined && <div className="section-aside">{aside}</div>}
      {action !== undefined && <div className="section-action">{action}</div>}
    </div>
  );
}
