import type { Binding } from '../keys/command.ts';
import { bindingsWith } from '../keys/keymap.ts';
import type { Page } from '../page.ts';
import type { Kind } from '../screen.ts';
import { contradictionPage } from '../walk/contradiction.ts';
import { expectPage } from '../walk/expect.ts';
import { historyPage } from '../walk/history.ts';
import { apartPage, closePage, othersPage, suspectsPage } from '../walk/listed.ts';
import { answeredPage } from '../walk/answered.ts';
import { partOffPage } from '../walk/part-off.ts';
import { mendedPage } from '../walk/described.ts';
import { workerPage } from '../walk/worker.ts';
import { walkPage } from '../walk/update.ts';
import { baselinePage } from './baseline.ts';
import { costsPage } from './costs.ts';
import { figuresPage, oneFigurePage } from './figures.ts';
import { homePage, sessionsPage } from './home.ts';
import { fullPage, jobsPage, keysPage, ladderPage, whyPage } from './reading.ts';
import { phonePage } from './photo/phone.ts';
import { photoPage } from './photo/photo.ts';
import { ownCausePage, ownCheckPage } from './own/page.ts';
import { replayPage } from './replay.ts';
import { settingsPage } from './settings.ts';
import { startPage } from './start.ts';
import { timersPage } from './timers.ts';
import { vehiclePage } from './vehicle.ts';
import { vehiclesPage } from './vehicles.ts';

/** Every kind of screen with what its keys do; complete by its type. */
export const pages: { readonly [K in Kind]: Page<K> } = {
  home: homePage,
  sessions: sessionsPage,
  start: startPage,
  walk: walkPage,
  answered: answeredPage,
  others: othersPage,
  expect: expectPage,
  suspects: suspectsPage,
  apart: apartPage,
  close: closePage,
  history: historyPage,
  worker: workerPage,
  contradiction: contradictionPage,
  settings: settingsPage,
  vehicles: vehiclesPage,
  vehicle: vehiclePage,
  mended: mendedPage,
  costs: costsPage,
  baseline: baselinePage,
  photo: photoPage,
  'part-off': partOffPage,
  timers: timersPage,
  phone: phonePage,
  figures: figuresPage,
  figure: oneFigurePage,
  'own-check': ownCheckPage,
  'own-cause': ownCausePage,
  replay: replayPage,
  keys: keysPage,
  jobs: jobsPage,
  full: fullPage,
  why: whyPage,
  ladder: ladderPage,
};

/** All keys of all screens. */
export const bindings: readonly Binding[] = bindingsWith(
  Object.values(pages).flatMap((page) => page.bindings ?? []),
);
