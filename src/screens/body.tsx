import type { State } from '../app/state.ts';
import { withPickedCause } from '../app/walk/question.ts';
import { pageLines } from '../app/pages/page-lines.ts';
import { FigureBody } from './figure.tsx';
import { HomeBody, SessionsBody } from './home.tsx';
import { ListBody } from './lists.tsx';
import { Choices, Line } from './parts.tsx';
import { PageBody } from './page.tsx';
import { SettingsBody } from './settings.tsx';
import { ReplayBody } from './replay.tsx';
import { StartBody } from './start.tsx';
import { WalkBody } from './walk.tsx';

type BodyProps = { readonly state: State; readonly rows: number; readonly columns: number };

/** The part of the screen between head and foot. */
export function Body({ state, rows, columns }: BodyProps) {
  const { screen, session, library, settings, sessions } = state;
  switch (screen.kind) {
    case 'home':
      return <HomeBody sessions={sessions} cursor={screen.cursor} rows={rows} />;
    case 'sessions':
      return <SessionsBody sessions={sessions} cursor={screen.cursor} rows={rows} />;
    case 'settings':
      return <SettingsBody settings={settings} screen={screen} rows={rows} />;
    case 'figures':
      return <Choices choices={screen.lines} cursor={screen.cursor} rows={rows} />;
    case 'figure':
      return <FigureBody page={screen.page} at={screen.at} rows={rows} />;
    case 'keys':
    case 'full':
    case 'why':
    case 'ladder':
      return <PageBody lines={pageLines(state, screen)} from={screen.cursor} />;
    case 'start':
      return library === undefined ? (
        <Line>Loading the trees...</Line>
      ) : (
        <StartBody form={screen.form} library={library} rows={rows} units={settings.units} />
      );
    case 'walk':
      return session === undefined ? null : (
        <WalkBody
          story={withPickedCause(session.story, screen)}
          input={screen.input}
          correcting={screen.correcting}
          seen={screen.seen ?? 0}
          rows={rows}
          columns={columns}
        />
      );
    case 'replay':
      return session === undefined ? null : (
        <ReplayBody session={session} screen={screen} rows={rows} columns={columns} />
      );
    case 'others':
    case 'suspects':
    case 'apart':
    case 'close':
    case 'contradiction':
      return session === undefined ? null : (
        <ListBody session={session} screen={screen} rows={rows} />
      );
  }
}
