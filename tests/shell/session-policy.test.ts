// The session lets nothing in or out but the page's own files.
import type { Session, WebContents } from 'electron';
import { describe, expect, it } from 'vitest';
import { guardContents } from '../../app/shell/contents-guard.ts';
import { applySessionPolicy, isAllowedRequest } from '../../app/shell/session-policy.ts';
import { silentLog } from './silent-log.ts';

type Listener = (...args: never[]) => unknown;

/** Keeps what the code under test hands to Electron, by the name of the method or event. */
function recorder() {
  const handed = new Map<string, Listener>();
  const keep = (name: string) => (listener: Listener) => void handed.set(name, listener);
  const on = (name: string, listener: Listener) => void handed.set(name, listener);
  function call(name: string, ...args: unknown[]): unknown {
    const listener = handed.get(name);
    if (!listener) throw new Error(`Nothing was handed over for ${name}`);
    return listener(...(args as never[]));
  }
  return { handed, keep, on, call };
}

describe('isAllowedRequest', () => {
  it.each([
    ['app://lotwright/index.html', 'mainFrame'],
    ['app://lotwright/assets/page.js', 'script'],
    ['blob:app://lotwright/0d1c', 'image'],
    ['data:image/svg+xml,x', 'image'],
  ])('lets %s through as %s', (address, resourceType) => {
    expect(isAllowedRequest(address, resourceType, false)).toBe(true);
  });

  it.each([
    ['http://example.invalid/', 'xhr'],
    ['https://example.invalid/?app://lotwright/', 'image'],
    ['ws://example.invalid/', 'webSocket'],
    ['wss://example.invalid/', 'webSocket'],
    ['ftp://example.invalid/', 'xhr'],
    ['file:///etc/hostname', 'mainFrame'],
    ['app://other/index.html', 'mainFrame'],
    ['blob:https://example.invalid/0d1c', 'image'],
    ['data:text/html,x', 'mainFrame'],
    ['data:text/javascript,x', 'script'],
    ['chrome://gpu/', 'mainFrame'],
    ['chrome-extension://abc/page.js', 'script'],
    ['devtools://devtools/bundled/x.html', 'mainFrame'],
    ['javascript:alert(1)', 'mainFrame'],
    ['', 'other'],
  ])('refuses %s as %s', (address, resourceType) => {
    expect(isAllowedRequest(address, resourceType, false)).toBe(false);
  });

  it('lets the developer tools’ own files through where they may be opened, and nothing else more', () => {
    expect(isAllowedRequest('devtools://devtools/bundled/x.html', 'mainFrame', true)).toBe(true);
    expect(isAllowedRequest('https://example.invalid/', 'xhr', true)).toBe(false);
  });
});

describe('applySessionPolicy', () => {
  function applied() {
    const { handed, keep, on, call } = recorder();
    const spelling: boolean[] = [];
    const session = {
      on,
      webRequest: { onBeforeRequest: keep('onBeforeRequest') },
      setPermissionRequestHandler: keep('setPermissionRequestHandler'),
      setPermissionCheckHandler: keep('setPermissionCheckHandler'),
      setDevicePermissionHandler: keep('setDevicePermissionHandler'),
      setSpellCheckerEnabled: (isOn: boolean) => void spelling.push(isOn),
    };
    const { log, lines } = silentLog();
    applySessionPolicy(session as unknown as Session, log, false);
    return { handed, call, lines, spelling };
  }

  it('denies every permission, asked for or looked up', () => {
    const { call } = applied();
    const answers: boolean[] = [];
    call('setPermissionRequestHandler', null, 'media', (isGranted: boolean) => void answers.push(isGranted));
    expect(answers).toEqual([false]);
    expect(call('setPermissionCheckHandler', null, 'clipboard-read')).toBe(false);
    expect(call('setDevicePermissionHandler', {})).toBe(false);
  });

  it('refuses requests and downloads, and logs no address', () => {
    const { call, lines } = applied();
    const answers: unknown[] = [];
    const details = { url: 'https://example.invalid/?code=4711', resourceType: 'xhr' };
    call('onBeforeRequest', details, (answer: unknown) => void answers.push(answer));
    call('onBeforeRequest', { url: 'app://lotwright/index.html', resourceType: 'mainFrame' }, (answer: unknown) =>
      answers.push(answer),
    );
    expect(answers).toEqual([{ cancel: true }, { cancel: false }]);
    let isPrevented = false;
    call('will-download', { preventDefault: () => (isPrevented = true) });
    expect(isPrevented).toBe(true);
    expect(lines).toHaveLength(2);
    expect(lines.join()).not.toMatch(/4711|example/);
  });

  it('turns the spell checker off, which would fetch dictionaries', () => {
    expect(applied().spelling).toEqual([false]);
  });
});

describe('guardContents', () => {
  it('prevents every way of leaving the page', () => {
    const { on, keep, call } = recorder();
    let webRtc = '';
    const contents = {
      on,
      setWindowOpenHandler: keep('setWindowOpenHandler'),
      setWebRTCIPHandlingPolicy: (policy: string) => {
        webRtc = policy;
      },
    };
    guardContents(contents as unknown as WebContents, silentLog().log);
    for (const name of ['will-navigate', 'will-frame-navigate', 'will-redirect', 'will-attach-webview']) {
      let isPrevented = false;
      call(name, { preventDefault: () => (isPrevented = true) });
      expect(isPrevented, name).toBe(true);
    }
    expect(call('setWindowOpenHandler', { url: 'app://lotwright/index.html' })).toEqual({ action: 'deny' });
    expect(webRtc).toBe('disable_non_proxied_udp');
  });
});
