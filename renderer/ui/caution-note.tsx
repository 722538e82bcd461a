// One caution: its title and its words, with a bar beside it. Where it belongs is the caller's business.
import './caution-note.css';

export type CautionNoteProps = {
  readonly title: string;
  readonly text: string;
  /** Said after it, in the words of the place it stands in. */
  readonly more?: string;
};

export function CautionNote({ title, text, more = '' }: CautionNoteProps) {
  return (
    <p className="caution-note">
      <b>{title}.</b> {text}
      {more !== '' && <i> {more}</i>}
    </p>
  );
}
