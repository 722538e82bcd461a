// Opens a photograph or document with the system's own program, and says what stands against it.
import { ask } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';
import { notify } from './notice-store.ts';

export async function openAttachment(vehicleId: string, attachmentId: string): Promise<void> {
  const answer = await ask('attachment:open', { id: vehicleId, attachmentId });
  if (!answer.ok) notify('problem', answer.error.problems[0]?.sentence ?? errorSentence(answer.error));
}
