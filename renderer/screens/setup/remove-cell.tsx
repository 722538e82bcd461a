// The last cell of a row in a table of Setup: takes the row out, or is empty for whoever may not.
import { Button } from '../../ui/button.tsx';

export function RemoveCell({
  isReadOnly,
  label,
  word,
  onRemove,
}: {
  readonly isReadOnly: boolean;
  /** Names the row, for who cannot see which one the button stands in. */
  readonly label: string;
  readonly word: string;
  readonly onRemove: () => void;
}) {
  return (
    <td className="setup-last">
      {!isReadOnly && (
        <Button kind="quiet" label={label} onPress={onRemove}>
          {word}
        </Button>
      )}
    </td>
  );
}
