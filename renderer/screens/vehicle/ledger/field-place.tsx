// Names a field inside a form, so that a jump can take the person to it. Draws nothing of its own.
import type { ReactNode } from 'react';

export function FieldPlace({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div className="field-place" data-field={name}>
      {children}
    </div>
  );
}

const controls = 'input:not([type="hidden"]), select, textarea, button';

/** Puts the focus on the named field ('decision.reason'), else on the field it is part of, else on the first one of the form. */
export function focusField(form: HTMLElement | null, name: string | null): void {
  if (form === null) return;
  const find = (field: string) => form.querySelector<HTMLElement>(`[data-field="${CSS.escape(field)}"]`);
  const named = name === null ? null : (find(name) ?? find(name.split('.')[0] ?? ''));
  (named ?? form).querySelector<HTMLElement>(controls)?.focus();
}

/** Puts the focus on the first field that something stands against. */
export function focusFirstProblem(form: HTMLElement | null): void {
  form?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
}
