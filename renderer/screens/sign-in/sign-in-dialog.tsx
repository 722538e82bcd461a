// The quick switch: pick a name, type, Enter. Whoever is at the desk stays there until somebody has signed in.
import type { Desk } from '../../../app/contract/views.ts';
import { signInAskedStore } from '../../state/sign-in-store.ts';
import { useStore } from '../../state/store.ts';
import { signInText as text } from '../../text/sign-in.ts';
import { Dialog } from '../../ui/dialog.tsx';
import { SignInForm } from './sign-in-form.tsx';

export function SignInDialog({ desk }: { readonly desk: Desk }) {
  if (!useStore(signInAskedStore)) return null;
  const close = () => signInAskedStore.set(false);
  return (
    <Dialog title={text.title} onClose={close} footer={null}>
      <SignInForm people={desk.people.filter((person) => person.isActive)} firstId={desk.person.id} onCancel={close} />
    </Dialog>
  );
}
