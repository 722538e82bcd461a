// The messages at the foot of the window: what was done, what could not be done. Placed once, by the frame.
import './notice.css';
import { closeNotice, type Notice, noticeStore } from '../state/notice-store.ts';
import { useStore } from '../state/store.ts';
import { commonText } from '../text/common.ts';
import { Button } from './button.tsx';

function NoticeLine({ notice }: { readonly notice: Notice }) {
  const { action } = notice;
  return (
    <div className={`notice is-${notice.kind}`} role={notice.kind === 'problem' ? 'alert' : 'status'}>
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
  return (
    <section className="notices" aria-label={commonText.notices}>
      {notices.map((notice) => (
        <NoticeLine key={notice.id} notice={notice} />
      ))}
    </section>
  );
}
