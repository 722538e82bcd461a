// What the screen is for and what to do on it first: one quiet sentence that the main area is described by, for whoever is at the desk.
import './screen-purpose.css';
import type { ReactNode } from 'react';
import { useDesk } from '../state/desk-store.ts';
import type { Route } from '../state/route-store.ts';
import { purposes, purposeText } from '../text/purposes.ts';

/** For aria-describedby of the main area, which takes the focus when somebody goes to a screen. */
export const purposeId = 'screen-purpose';

export function ScreenPurpose({
  screen,
  isHidden = false,
  children,
}: {
  readonly screen: Route['screen'];
  /** Still described by it, only not drawn. */
  readonly isHidden?: boolean;
  /** What else stands in the same line. */
  readonly children?: ReactNode;
}) {
  const sentence = purposes[screen][useDesk().person.role];
  if (sentence === null) return null;
  return (
    <div className="screen-purpose" hidden={isHidden}>
      <span id={purposeId}>{sentence}</span>
      {children}
    </div>
  );
}

/** Opens the sentence where an always visible one would cost a row of the table. */
export function PurposeButton({ isOpen, onToggle }: { readonly isOpen: boolean; readonly onToggle: () => void }) {
  return (
    <button
      type="button"
      className="purpose-button"
      aria-expanded={isOpen}
      aria-controls={purposeId}
      aria-label={purposeText.whatFor}
      title={purposeText.whatFor}
      onClick={onToggle}
    >
      ?
    </button>
  );
}
