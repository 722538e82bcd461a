// The whole page of the vehicle as a place to drop files on: says so while they are held over it, and takes the person to the section where
// they arrive. The same is reached by keyboard through the section's button.
import { addFiles } from '../../../state/adding-files.ts';
import { lockedStore } from '../../../state/desk-store.ts';
import { rightsHere } from '../../../state/rights-here.ts';
import { useStore } from '../../../state/store.ts';
import { attachmentsText as text } from '../../../text/attachments.ts';
import { goToSection } from '../page/jump.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { useTakenFiles } from './take-files.ts';

export function DropArea() {
  const { id, vehicle, today, canPut, role } = useVehicle();
  // The page stays where it is under the cover of a locked desk, and says nothing of it.
  const isLocked = useStore(lockedStore) !== null;
  const isOver = useTakenFiles(canPut('attachments') && !isLocked, (files) => {
    addFiles(id, files, today);
    goToSection('attachments');
  });
  if (!isOver) return null;
  return (
    <div className="drop-area" aria-hidden="true">
      <div className="drop-words">
        <p>{text.dropHere(vehicle.identity.stockNumber)}</p>
        <p className="quiet">{rightsHere(role).addsDocuments ? text.addHint : text.addHintPictures}</p>
      </div>
    </div>
  );
}
