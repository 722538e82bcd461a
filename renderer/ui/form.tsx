// A form that saves on Enter or by its button, but never past a field whose text could not be read: it goes to that field instead.
import type { ReactNode } from 'react';

export type FormProps = {
  /** Read aloud as the form's name. */
  readonly label: string;
  readonly onSubmit: () => void;
  readonly children: ReactNode;
  readonly className?: string;
};

export function Form({ label, onSubmit, children, className }: FormProps) {
  return (
    <form
      aria-label={label}
      className={className}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const unreadable = event.currentTarget.querySelector<HTMLElement>('input:invalid, textarea:invalid');
        if (unreadable === null) onSubmit();
        else unreadable.focus();
      }}
    >
      {children}
    </form>
  );
}
