// Starts the page: settings of libraries first, then the stores that follow the main process, then the frame.
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { z } from 'zod';
import './styles/tokens.css';
import './styles/dark.css';
import './styles/base.css';
import { applyTheme } from './frame/apply-theme.ts';
import { Frame } from './frame/frame.tsx';
import { followDesk, readDesk } from './state/desk-store.ts';
import { followLot, readLot } from './state/lot-store.ts';
import { followShop } from './state/shop-store.ts';
import { watchActivity } from './state/sign-in-store.ts';

// Without this the library tries whether it may make functions from text, which the page's security policy refuses and reports.
z.config({ jitless: true });

applyTheme('system');
followDesk();
followLot();
followShop();
watchActivity();
void readDesk();
void readLot();

const place = document.getElementById('page');
if (place === null) throw new Error('The page has no place to draw in.');
createRoot(place).render(
  <StrictMode>
    <Frame />
  </StrictMode>,
);
