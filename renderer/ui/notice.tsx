// The messages at the foot of the window: what was done, what could not be done. Placed once, by the frame.
import './notice.css';
import { closeNotice, type Notice, noticeStore } from '../state/notice-store.ts';
import { useStore } from '../state/store.ts';
import { commonText } from '../text/common.ts';
import { Button } from './button.tsx';
import { LiveRegion } from './live-region.tsx';

function NoticeLine({ notice }: { readonly notice: Notice }) {
  const { action } = notice;
  return (
    <div className={`notice is-${notice.kind}`} role={notice.kind === 'problem' ? 'alert' : undefined}>
      <p>{notice.sentence}</p>
      {action !== null && (
        <Button
          kind="quiet"
          onPress={() => {
            closeNotice(notice.id);
            action.onPress();
          }}
        >
          {action.label}
        </Button>
      )}
      <Button kind="quiet" onPress={() => closeNotice(notice.id)}>
        {commonText.close}
      </Button>
    </div>
  );
}

export function NoticeArea() {
  const notices = useStore(noticeStore);
  const lastDone = notices.findLast((notice) => notice.kind === 'done');
  return (
    <section className="notices" aria-label={commonText.notices}>
      {/* A region that is there before the words come is the only one that is read reliably. */}
      <LiveRegion text={lastDone?.sentence ?? ''} />
      {notices.map((notice) => (
        <NoticeLine key={notice.id} notice={notice} />
      ))}
    </section>
  );
}
