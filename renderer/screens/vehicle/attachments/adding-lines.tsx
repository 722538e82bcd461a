// How far the adding of files is, and those that were not added, each with its reason: to be tried again or left out.
import { addingStore, leaveOut, tryAgain, waitingIn } from '../../../state/adding-files.ts';
import { useStore } from '../../../state/store.ts';
import { attachmentsText as text } from '../../../text/attachments.ts';
import { Button } from '../../../ui/button.tsx';
import { useVehicle } from '../page/vehicle-context.ts';

export function AddingLines() {
  const { id, today } = useVehicle();
  const adding = useStore(addingStore);
  const waiting = waitingIn(adding);
  const refused = adding.files.filter(({ vehicleId, refusal }) => vehicleId === id && refusal !== null);
  const [now] = waiting;
  return (
    <>
      <p className="adding-now" role="status">
        {now !== undefined && text.adding(adding.done + 1, adding.done + waiting.length, now.file.name)}
      </p>
      {refused.length > 0 && (
        <div className="not-added" role="alert">
          <p>{text.notAdded(refused.length)}</p>
          <ul>
            {refused.map((one) => (
              <li key={one.id}>
                <span>
                  <b>{one.file.name}</b> {one.refusal}
                </span>
                <span className="not-added-actions">
                  <Button label={text.ofFile(text.tryAgain, one.file.name)} onPress={() => tryAgain(one.id, today)}>
                    {text.tryAgain}
                  </Button>
                  <Button
                    kind="quiet"
                    label={text.ofFile(text.leaveOut, one.file.name)}
                    onPress={() => leaveOut(one.id)}
                  >
                    {text.leaveOut}
                  </Button>
                </span>
              </li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}
