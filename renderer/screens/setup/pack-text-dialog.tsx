// The whole rule pack as text: to be looked at, copied, or pasted over. Nothing is taken over that the schema refuses.
import { useState } from 'react';
import type { RulePack } from '../../../app/domain/programming/rule-pack.ts';
import { commonText } from '../../text/common.ts';
import { setupRulesText as text } from '../../text/setup-rules.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { ParagraphField } from '../../ui/text-field.tsx';
import { packText, readPackText } from './rule-pack-draft.ts';

export type PackTextDialogProps = {
  readonly pack: RulePack;
  readonly isReadOnly: boolean;
  readonly onTake: (pack: RulePack) => void;
  readonly onClose: () => void;
};

export function PackTextDialog({ pack, isReadOnly, onTake, onClose }: PackTextDialogProps) {
  const [typed, setTyped] = useState(() => packText(pack));
  const [problems, setProblems] = useState<readonly string[]>([]);
  const take = () => {
    const read = readPackText(typed);
    if (read.ok) {
      onTake(read.value);
      onClose();
    } else setProblems(read.error);
  };
  return (
    <Dialog
      title={text.textTitle}
      onClose={onClose}
      isWide
      footer={
        <>
          <Button onPress={onClose}>{isReadOnly ? commonText.close : commonText.cancel}</Button>
          {!isReadOnly && (
            <Button kind="main" onPress={take}>
              {text.takeOver}
            </Button>
          )}
        </>
      }
    >
      <p className="setup-hint">{text.textHint}</p>
      {problems.length > 0 && (
        <div role="alert" className="setup-problems">
          {problems.slice(0, 12).map((problem) => (
            <p key={problem}>{problem}</p>
          ))}
        </div>
      )}
      <ParagraphField
        label={text.text}
        value={typed}
        onChange={(next) => {
          setTyped(next);
          setProblems([]);
        }}
        rows={20}
        isReadOnly={isReadOnly}
        isWide
      />
    </Dialog>
  );
}
