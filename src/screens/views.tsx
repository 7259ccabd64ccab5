import type { ReactNode } from 'react';
import { baselineRows } from '../app/pages/baseline.ts';
import { costFacts, costLines } from '../app/pages/costs.ts';
import { timerLines } from '../app/pages/timers.ts';
import { figuresShown } from '../app/pages/figures.ts';
import { offeredIn } from '../app/pages/start.ts';
import { chosenVehicle } from '../app/pages/start-form.ts';
import { pastLines } from '../core/session/vehicle/past-words.ts';
import { offeredNow } from '../app/pages/own/page.ts';
import { readingLines, type ReadingScreen } from '../app/pages/reading.ts';
import { answeredLines } from '../app/walk/answered.ts';
import { workerLines } from '../app/walk/worker.ts';
import type { At, Kind } from '../app/screen.ts';
import type { State } from '../app/state.ts';
import { ClaimBody } from './claim.tsx';
import { historyPages } from './history-rows.ts';
import { closePages } from './close-rows.ts';
import { TypedList } from './costs/typed-list.tsx';
import { FigureBody } from './figure.tsx';
import { HomeBody, SessionsBody } from './home.tsx';
import { ListBody, type ListScreen } from './lists.tsx';
import { PageBody } from './page.tsx';
import { Choices, Head, Line, Narrowed } from './parts.tsx';
import { bindings } from '../app/pages/table.ts';
import { PhoneBody } from './photo/phone.tsx';
import { PhotoBody } from './photo/photo.tsx';
import { ReplayBody } from './replay.tsx';
import { boardPages } from './apart/board-rows.ts';
import { MendedBody } from './forms/mended.tsx';
import { PartOffBody } from './forms/part-off.tsx';
import { NameFormBody } from './own/name-form.tsx';
import { SettingsBody } from './settings.tsx';
import { StartBody } from './start.tsx';
import { VehiclesBody } from './vehicles/list.tsx';
import { VehicleBody } from './vehicles/sheet.tsx';
import { WalkBody } from './walk.tsx';

type Size = { readonly rows: number; readonly columns: number };

type View<K extends Kind> = (screen: At<K>, state: State, size: Size) => ReactNode;

const list: View<ListScreen['kind']> = (screen: ListScreen, { session }, size) =>
  session && <ListBody session={session} screen={screen} {...size} />;
const reading: View<ReadingScreen['kind']> = (screen: ReadingScreen, state) => (
  <PageBody lines={readingLines(state, screen)} from={screen.cursor} />
);

/** What a vehicle's past jobs left, once they were looked for. */
const pastShown = (name: string | undefined, past: State['past']): readonly string[] =>
  past !== undefined && past.vehicle === name ? pastLines(past.jobs) : [];

/** How each kind of screen looks between head and foot; complete by its type. */
const views: { readonly [K in Kind]: View<K> } = {
  home: ({ cursor }, { sessions, unsafe }, { rows }) => (
    <HomeBody sessions={sessions} unsafe={unsafe} cursor={cursor} rows={rows} />
  ),
  sessions: (search, { sessions }, { rows }) => (
    <SessionsBody sessions={sessions} search={search} rows={rows} />
  ),
  start: ({ form }, state, { rows, columns }) => {
    const offered = offeredIn(state);
    const { vehicles, past, settings } = state;
    return offered === undefined ? (
      <Line>Loading the trees...</Line>
    ) : (
      <StartBody
        {...{ form, offered, units: settings.units, rows, columns }}
        past={pastShown(chosenVehicle(form, vehicles)?.name, past)}
      />
    );
  },
  walk: ({ input, seen = [], page = 0 }, { question: { due }, library }, size) =>
    due && <WalkBody {...{ due, library, input, seen, page }} {...size} />,
  answered: (screen, { session }) =>
    session && <PageBody lines={answeredLines(session.story, screen)} from={0} />,
  others: list,
  suspects: list,
  apart: (screen, { session }, size) =>
    session && <ClaimBody page={boardPages(session.story, screen, size)[0] ?? []} />,
  'part-off': (screen, { session }) =>
    session && <PartOffBody story={session.story} screen={screen} />,
  close: ({ cursor, page = 0 }, { session }, size) => {
    const pages = session && closePages(session.story, cursor, size);
    return pages && <ClaimBody page={pages[page] ?? pages.at(-1) ?? []} />;
  },
  contradiction: list,
  expect: list,
  history: ({ cursor }, { session }, size) =>
    session && <ClaimBody page={historyPages(session.story, cursor, size)[0] ?? []} />,
  worker: ({ cursor }, { session, settings }, { rows }) =>
    session && (
      <>
        <Head>
          <Line as="title">WHO works from here on? n: another name. Esc: not said.</Line>
        </Head>
        <Choices choices={workerLines(session.story, settings)} cursor={cursor} rows={rows - 1} />
      </>
    ),
  settings: (screen, { settings }, { rows }) => (
    <SettingsBody settings={settings} screen={screen} rows={rows} />
  ),
  vehicles: (search, { vehicles }, { rows }) => (
    <VehiclesBody vehicles={vehicles} search={search} rows={rows} />
  ),
  vehicle: (screen, state, { rows }) => <VehicleBody screen={screen} state={state} rows={rows} />,
  baseline: (screen, { session }, size) =>
    session && (
      <TypedList
        title="BASELINE: before anything is disturbed"
        facts={[]}
        lines={baselineRows(session)}
        {...{ screen, ...size }}
      />
    ),
  costs: (screen, { session }, size) =>
    session && (
      <TypedList
        title="WHAT IT TAKES, as far as it was entered"
        facts={costFacts(session.story)}
        lines={costLines(session.story)}
        {...{ screen, ...size }}
      />
    ),
  timers: (screen, state, size) => (
    <TypedList title="TIMERS" facts={[]} lines={timerLines(state)} {...{ screen, ...size }} />
  ),
  figures: (search, _, { rows }) => (
    <>
      <Narrowed sought={search.sought} left={figuresShown(search).length} />
      <Choices
        choices={figuresShown(search)}
        cursor={search.cursor}
        rows={search.sought === '' ? rows : rows - 1}
      />
    </>
  ),
  figure: ({ page, at }, _, size) => <FigureBody page={page} at={at} {...size} />,
  replay: (screen, _, size) => <ReplayBody screen={screen} {...size} />,
  'own-check': ({ form }, state, size) => (
    <NameFormBody form={form} offered={offeredNow(state, form)} {...size} />
  ),
  'own-cause': ({ form }, _, size) => <NameFormBody form={form} offered={[]} {...size} />,
  mended: (screen, { session }) => session && <MendedBody story={session.story} screen={screen} />,
  photo: (screen, { question: { due } }) => <PhotoBody screen={screen} due={due} />,
  phone: (screen, state, size) => <PhoneBody {...{ screen, state, bindings }} {...size} />,
  keys: reading,
  jobs: reading,
  full: reading,
  why: reading,
  ladder: reading,
};

type BodyProps = Size & { readonly state: State };

/** The part of the screen between head and foot. */
export const Body = ({ state, rows, columns }: BodyProps) =>
  viewOf(state.screen, state, { rows, columns });

const viewOf = <K extends Kind>(screen: At<K>, state: State, size: Size): ReactNode =>
  views[screen.kind](screen, state, size);
