// The small picture of a photograph, read once it comes near the part of the page that is looked at.
import { useEffect, useRef, useState } from 'react';
import { useAttachmentUrl } from '../../../state/use-attachment-url.ts';
import { attachmentsText as text } from '../../../text/attachments.ts';

/** Half a screen ahead. */
const ahead = '400px';

export function Thumbnail({ vehicleId, attachmentId }: { readonly vehicleId: string; readonly attachmentId: string }) {
  const place = useRef<HTMLSpanElement>(null);
  const [isNear, setIsNear] = useState(false);
  const [isBroken, setIsBroken] = useState(false);
  useEffect(() => {
    const element = place.current;
    if (element === null || isNear) return;
    const watcher = new IntersectionObserver((seen) => setIsNear(seen.some((one) => one.isIntersecting)), {
      rootMargin: ahead,
    });
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [isNear]);
  const shown = useAttachmentUrl(vehicleId, attachmentId, 'small', isNear);
  const isFailed = shown.state === 'failed' || isBroken;
  return (
    <span ref={place} className="thumbnail">
      {shown.state === 'here' && !isBroken && <img src={shown.url} alt="" onError={() => setIsBroken(true)} />}
      {isFailed && <span className="quiet">{shown.state === 'failed' ? shown.sentence : text.unseen}</span>}
    </span>
  );
}
