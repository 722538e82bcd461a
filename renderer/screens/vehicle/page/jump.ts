// Takes a person to the section and the entry where something is dealt with: opens it, brings it into view, puts the focus there.
import type { GateItem } from '../../../../app/domain/readiness/gate.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { entryOpenAt, openEntry } from '../ledger/open-entries.ts';
import { type SectionKey, sectionOf } from './sections.ts';
import { sectionElementId } from './vehicle-section.tsx';

/** Brings a section, or something inside it, to the top of the screen and puts the focus on it. */
export function goToSection(section: SectionKey, inside?: string): void {
  // After the entry that was opened for it is drawn: its form takes the focus by itself.
  requestAnimationFrame(() => {
    const element = document.getElementById(sectionElementId(section));
    if (element === null) return;
    const place = (inside === undefined ? null : element.querySelector<HTMLElement>(inside)) ?? element;
    place.scrollIntoView({ block: 'start' });
    if (
      place.contains(document.activeElement) ||
      element.querySelector('.entry-form')?.contains(document.activeElement)
    )
      return;
    const target =
      inside === undefined
        ? null
        : (place.querySelector<HTMLElement>('.is-first .step-actions button') ??
          place.querySelector<HTMLElement>('.is-current .step-actions button') ??
          place.querySelector<HTMLElement>('button'));
    (target ?? element).focus({ preventScroll: true });
  });
}

export type Jumping = {
  readonly vehicleId: string;
  readonly canWrite: boolean;
  /** Key of the gate, which names the check where the place only says "a signature". */
  readonly gateKey: string;
};

/** Where a missing scan is asked for, the form of a new one opens; where an entry is named, its own. */
export function jumpTo(place: GateItem['place'], { vehicleId, canWrite, gateKey }: Jumping): void {
  const section = sectionOf(place);
  if (!('list' in place)) {
    if (canWrite) openEntry(`${vehicleId}/${place.section}`, place.section, { focusOn: fieldOfGate(gateKey) });
    goToSection(section);
    return;
  }
  if (place.list === 'signOffs') {
    goToSection(section, `[data-fact="${CSS.escape(gateKey.replace(/^check:/, ''))}"]`);
    return;
  }
  const row = place.id === null ? undefined : `[data-fact="${CSS.escape(place.id)}"]`;
  if (place.list !== 'jobs' && canWrite) {
    const listPlace = `${vehicleId}/${place.list}`;
    if (place.id !== null) openEntry(listPlace, place.id);
    else if (entryOpenAt(listPlace)?.isNew !== true) openEntry(listPlace, newIdentifier(), { isNew: true });
  }
  goToSection(section, row);
}

function fieldOfGate(gateKey: string): string | null {
  if (gateKey === 'price') return 'askingCents';
  return gateKey === 'paper' ? 'paperReceivedOn' : null;
}
