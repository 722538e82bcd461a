// A dialog on the native element: it holds the focus, closes on Esc and gives the focus back to where it was. Open while it is drawn.
import './dialog.css';
import { type ReactNode, useEffect, useId, useRef } from 'react';
import { commonText } from '../text/common.ts';
import { Button } from './button.tsx';

export type DialogProps = {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Buttons, the main one last. Without it there is a Close; null: the buttons are in the body. */
  readonly footer?: ReactNode;
  readonly isWide?: boolean;
};

/** Words alone, and more of them than there is room for: only by taking the focus can they be scrolled by keyboard. */
function needsKeysToScroll(body: HTMLElement): boolean {
  return body.scrollHeight > body.clientHeight && body.querySelector('a, button, input, select, textarea') === null;
}

export function Dialog({ title, onClose, children, footer, isWide = false }: DialogProps) {
  const titleId = useId();
  const element = useRef<HTMLDialogElement>(null);
  const body = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const dialog = element.current;
    const before = document.activeElement;
    if (dialog !== null && !dialog.open) dialog.showModal();
    if (body.current !== null && needsKeysToScroll(body.current)) body.current.tabIndex = 0;
    return () => {
      dialog?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <dialog
      ref={element}
      className={`dialog${isWide ? ' is-wide' : ''}`}
      aria-labelledby={titleId}
      onCancel={(event) => {
        // A date picker or a list inside may be what was cancelled.
        if (event.target !== element.current) return;
        event.preventDefault();
        onClose();
      }}
      onKeyDown={(event) => event.stopPropagation()}
    >
      <h2 id={titleId} className="dialog-title">
        {title}
      </h2>
      <div ref={body} className="dialog-body">
        {children}
      </div>
      {footer !== null && (
        <div className="dialog-foot">{footer ?? <Button onPress={onClose}>{commonText.close}</Button>}</div>
      )}
    </dialog>
  );
}
