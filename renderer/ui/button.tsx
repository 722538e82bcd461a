// A button that says why it cannot be pressed instead of going dead: it stays reachable by keyboard and tells its reason.
import './button.css';
import { type ReactNode, type Ref, useId } from 'react';

export type ButtonProps = {
  readonly kind?: 'plain' | 'main' | 'danger' | 'quiet';
  readonly onPress?: () => void;
  readonly isDisabled?: boolean;
  /** A sentence; shown as the tip and read aloud. */
  readonly whyDisabled?: string | undefined;
  /** As written for a person: 'Ctrl+Z'. Shown in the tip, announced as the shortcut. */
  readonly shortcut?: string | undefined;
  readonly children: ReactNode;
  readonly type?: 'button' | 'submit';
  /** Only where the visible words do not say enough by themselves, for example 'Remove' in a list. */
  readonly label?: string | undefined;
  /** For a button that stays down. */
  readonly isPressed?: boolean | undefined;
  readonly tip?: string | undefined;
  readonly buttonRef?: Ref<HTMLButtonElement>;
};

export function Button({
  kind = 'plain',
  onPress,
  isDisabled = false,
  whyDisabled,
  shortcut,
  children,
  type = 'button',
  label,
  isPressed,
  tip,
  buttonRef,
}: ButtonProps) {
  const reasonId = useId();
  const hasReason = isDisabled && whyDisabled !== undefined && whyDisabled !== '';
  const title = hasReason ? whyDisabled : [tip, shortcut].filter((part) => part !== undefined).join(' – ') || undefined;
  return (
    <>
      <button
        ref={buttonRef}
        type={type}
        className={`button is-${kind}`}
        title={title}
        aria-label={label}
        aria-pressed={isPressed}
        aria-disabled={isDisabled || undefined}
        aria-describedby={hasReason ? reasonId : undefined}
        aria-keyshortcuts={shortcut?.replaceAll('Ctrl', 'Control')}
        onClick={(event) => {
          if (isDisabled) event.preventDefault();
          else onPress?.();
        }}
      >
        {children}
      </button>
      {hasReason && (
        <span id={reasonId} className="unseen">
          {whyDisabled}
        </span>
      )}
    </>
  );
}
