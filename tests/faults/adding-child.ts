// Run as a process of its own and killed at any moment: adds photographs without end and says on its output what has been acknowledged.
import { randomBytes } from 'node:crypto';
import { writeSync } from 'node:fs';
import { attachmentFileName } from '../../app/domain/vehicle/attachment.ts';
import { contentHash } from '../../app/storage/content-hash.ts';
import { openFleet } from '../../app/storage/open-fleet.ts';
import { aPhotograph } from '../storage/attachment-fixture.ts';
import { byAda } from '../storage/telling-fixture.ts';

const [folder = ''] = process.argv.slice(2);
const clock = () => new Date().toISOString();
const opened = await openFleet({ folder, clock, owner: { user: 'child', host: 'desk-1', processId: process.pid } });
if (!opened.ok) throw new Error(opened.error.detail);
const store = opened.value;
if (store.isReadOnly) throw new Error(store.isReadOnly.sentence);

for (;;) {
  const kept = store.vehicles().get('abcd');
  if (!kept) throw new Error('There is no such vehicle.');
  const bytes = randomBytes(200_000);
  const written = await store.keepAttachmentFiles('abcd', [
    { name: attachmentFileName(contentHash(bytes), 'png'), bytes },
  ]);
  if (!written.ok) throw new Error(written.error.detail);
  const attachments = [...kept.data.attachments, aPhotograph(bytes)];
  const saved = await store.saveVehicle({ ...kept.data, attachments }, kept.revision, byAda);
  if (!saved.ok) throw new Error(saved.error.detail);
  writeSync(1, `added ${contentHash(bytes)}\n`);
}
