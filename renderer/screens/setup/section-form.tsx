// One section of Setup: its head with Save and Take back, its fields, and what stands against it as a whole. One Save a section, because
// rates that were half typed would change every amount in the program and cannot be undone.
import { type ReactNode, useEffect, useId, useRef } from 'react';
import type { ChangeProblem } from '../../../app/domain/vehicle/change-problem.ts';
import { isPartTouched, type ShopPartName } from '../../state/shop-parts.ts';
import { discardShopDraft, type ShopState, saveShopPart } from '../../state/shop-store.ts';
import { sayWholeDaysIn } from '../../text/say-day.ts';
import { setupText } from '../../text/setup.ts';
import { Button } from '../../ui/button.tsx';
import { Form } from '../../ui/form.tsx';
import { SectionHead } from '../../ui/section-head.tsx';

export type SectionProps = {
  readonly state: ShopState;
  /** Why nothing can be changed; null when it can. */
  readonly readOnlyReason: string | null;
};

/** The sentence at a field of this part, or undefined. */
export function problemAt(state: ShopState, part: ShopPartName, field: string): string | undefined {
  const found = state.problems[part]?.find((problem) => problem.field === field);
  return found && sayWholeDaysIn(found.sentence);
}

export function SectionForm({
  part,
  state,
  readOnlyReason,
  hint,
  count,
  extraAction,
  children,
}: SectionProps & {
  readonly part: ShopPartName;
  readonly hint?: string;
  readonly count?: number;
  readonly extraAction?: ReactNode;
  readonly children: ReactNode;
}) {
  const headId = useId();
  const body = useRef<HTMLDivElement>(null);
  const title = setupText.sections[part];
  const isNew = state.view?.revision === 0;
  const isTouched = state.view !== null && isPartTouched(part, state.drafts, state.view.shop);
  const isSaving = state.saving === part;
  const problems: readonly ChangeProblem[] = state.problems[part] ?? [];
  const forWhole = problems.filter((problem) => problem.field === '');
  const hasProblems = problems.length > 0;
  useEffect(() => {
    if (hasProblems) body.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [hasProblems]);
  const maySave = readOnlyReason === null && (isTouched || isNew) && !isSaving;
  return (
    <section aria-labelledby={headId} className={`setup-section is-${part}`}>
      <Form label={title} onSubmit={() => void (maySave && saveShopPart(part))}>
        <SectionHead
          id={headId}
          title={title}
          count={count}
          aside={
            isSaving ? setupText.saving : isTouched ? <b className="setup-unsaved">{setupText.notSaved}</b> : undefined
          }
          action={
            <>
              {extraAction}
              {isTouched && (
                <Button kind="quiet" label={setupText.discardLabel(title)} onPress={() => discardShopDraft(part)}>
                  {setupText.discard}
                </Button>
              )}
              <Button
                type="submit"
                kind={isTouched || isNew ? 'main' : 'plain'}
                label={setupText.saveLabel(title)}
                isDisabled={!maySave}
                whyDisabled={readOnlyReason ?? setupText.nothingToSave}
              >
                {setupText.save}
              </Button>
            </>
          }
        />
        {forWhole.length > 0 && (
          <div role="alert" className="setup-problems">
            {forWhole.map(({ sentence }) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </div>
        )}
        {hint !== undefined && <p className="setup-hint">{hint}</p>}
        <div ref={body} key={state.discards}>
          {children}
        </div>
      </Form>
    </section>
  );
}
