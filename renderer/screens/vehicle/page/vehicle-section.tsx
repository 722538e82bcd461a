// The frame of each section: a landmark with its head, to which the list of sections and the gates jump.
import type { ReactNode, Ref } from 'react';
import { SectionHead } from '../../../ui/section-head.tsx';
import type { SectionKey } from './sections.ts';

export function sectionElementId(section: SectionKey): string {
  return `section-${section}`;
}

export type VehicleSectionProps = {
  readonly section: SectionKey;
  readonly title: string;
  readonly count?: number;
  readonly aside?: ReactNode;
  readonly action?: ReactNode;
  readonly rootRef?: Ref<HTMLDivElement>;
  readonly children: ReactNode;
};

export function VehicleSection({ section, title, count, aside, action, rootRef, children }: VehicleSectionProps) {
  const titleId = `${sectionElementId(section)}-title`;
  return (
    <section id={sectionElementId(section)} className="vehicle-section" aria-labelledby={titleId} tabIndex={-1}>
      <div ref={rootRef}>
        <SectionHead
          id={titleId}
          title={title}
          count={count}
          {...(aside === undefined ? {} : { aside })}
          {...(action === undefined ? {} : { action })}
        />
        {children}
      </div>
    </section>
  );
}
