// The list of sections that stays in view: how many entries each has, where something holds the sale, where something is not saved.
import { useEffect, useState } from 'react';
import { useDraftKeys } from '../../../state/use-edit-draft.ts';
import { vehicleText } from '../../../text/vehicle.ts';
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { goToSection } from './jump.ts';
import { countIn, holdingBySection, type SectionKey, sectionsWithDrafts } from './sections.ts';
import { useVehicle } from './vehicle-context.ts';
import { sectionElementId } from './vehicle-section.tsx';

/** The section that is being read: the last whose head has passed the upper part of the screen. */
function useCurrentSection(keys: readonly SectionKey[]): SectionKey | null {
  const [current, setCurrent] = useState<SectionKey | null>(null);
  const joined = keys.join(' ');
  useEffect(() => {
    const scroller = document.getElementById(sectionElementId('details'))?.closest('.screen');
    if (!scroller) return;
    const find = () => {
      const line = scroller.getBoundingClientRect().top + scroller.clientHeight / 3;
      const isAtEnd = scroller.scrollTop + scroller.clientHeight >= scroller.scrollHeight - 2;
      const passed = (joined.split(' ') as SectionKey[]).filter((key) => {
        const element = document.getElementById(sectionElementId(key));
        return element !== null && (element.getBoundingClientRect().top <= line || (isAtEnd && key === 'sale'));
      });
      setCurrent(passed[passed.length - 1] ?? null);
    };
    find();
    scroller.addEventListener('scroll', find, { passive: true });
    return () => scroller.removeEventListener('scroll', find);
  }, [joined]);
  return current;
}

export function SectionList({ keys }: { readonly keys: readonly SectionKey[] }) {
  const { id, view } = useVehicle();
  const holding = holdingBySection(view);
  const unsaved = sectionsWithDrafts(useDraftKeys(), id);
  const current = useCurrentSection(keys);
  return (
    <nav className="section-list" aria-label={vehicleText.sections}>
      <ul>
        {keys.map((key) => {
          const holds = holding.get(key) ?? 0;
          return (
            <li key={key}>
              <a
                href={`#${sectionElementId(key)}`}
                aria-current={current === key ? 'location' : undefined}
                title={holds > 0 ? vehicleText.holdsHere(holds) : undefined}
                onClick={(event) => {
                  event.preventDefault();
                  goToSection(key);
                }}
              >
                <span className={holds > 0 ? 'section-mark is-holding' : 'section-mark'} aria-hidden="true" />
                <span>{sectionNames[key]}</span>
                {holds > 0 && <span className="unseen">, {vehicleText.holdsHere(holds)}</span>}
                {unsaved.has(key) && <span className="section-unsaved">{vehicleText.unsaved}</span>}
                {!unsaved.has(key) && <span className="section-entries">{countIn(view, key) || ''}</span>}
              </a>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}
