// Whether people sign in, and when the desk locks; with what each choice means.
import type { SignInRules } from '../../../app/domain/people/sign-in.ts';
import type { Blankable } from '../../state/shop-parts.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { signInText as text } from '../../text/sign-in.ts';
import { CheckField } from '../../ui/check-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

export function SignInSection({
  kept,
  managerHasSecret,
  ...section
}: SectionProps & { readonly kept: SignInRules; readonly managerHasSecret: boolean }) {
  const { state } = section;
  const rules: Blankable<SignInRules> = state.drafts.signIn ?? kept;
  const field = <Key extends keyof SignInRules>(key: Key) => ({
    value: rules[key],
    onChange: (value: (typeof rules)[Key]) => typeIntoShop('signIn', { ...rules, [key]: value }, key),
    problem: problemAt(state, 'signIn', key),
    isReadOnly: section.readOnlyReason !== null,
  });
  return (
    <SectionForm {...section} part="signIn" hint={text.rulesHint}>
      {!managerHasSecret && <p className="setup-hint">{text.noManagerYet}</p>}
      <div className="sign-in-rules">
        <CheckField label={text.wantsSignIn} hint={text.wantsSignInHint} {...field('wantsSignIn')} />
        <CheckField label={text.moneyNeedsSignIn} hint={text.moneyNeedsSignInHint} {...field('moneyNeedsSignIn')} />
        <NumberField
          label={text.idleMinutes}
          hint={text.idleMinutesHint}
          minimum={1}
          maximum={240}
          {...field('idleMinutes')}
        />
      </div>
    </SectionForm>
  );
}
