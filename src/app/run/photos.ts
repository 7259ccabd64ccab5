import { networkInterfaces } from 'node:os';
import { firstOf, problemsOf, type Problem } from '../../core/problem.ts';
import { attempt } from '../../store/files.ts';
import { keepPhoto, pictureOf, takePhoto } from '../../store/photos.ts';
import type { Effect } from '../effect.ts';
import type { Program } from '../program.ts';
import type { Ports } from './ports.ts';

/** What is done about photos. */
type PhotoEffect = Extract<Effect, { kind: 'keep-photo' | 'start-phone' | 'stop-phone' }>;

type World = Pick<Ports, 'disk' | 'folders' | 'phone'>;
/** Path of the open session. */
type OpenPath = () => string | undefined;

/** Copies photos beside the open session, by their path or as a telephone sends them. */
export class Photos {
  readonly #ports: World;
  readonly #session: OpenPath;
  #stop: () => void = () => {};
  /** Which opening of the page counts: one that was left before it was open is shut at once. */
  #opening = 0;

  constructor(ports: World, session: OpenPath) {
    this.#ports = ports;
    this.#session = session;
  }

  perform(effect: PhotoEffect, program: Program): void {
    if (effect.kind === 'stop-phone') this.stop();
    else if (effect.kind === 'keep-photo') this.#keep(effect, program);
    else
      this.#start(program).catch((error: unknown) =>
        program.dispatch({ kind: 'phone-refused', problem: notLoaded(error) }),
      );
  }

  /** Shuts the page of the telephone; its address leads nowhere from here on. */
  stop(): void {
    this.#opening += 1;
    this.#stop();
    this.#stop = () => {};
  }

  /** The photo is on the disk before the action is taken. */
  #keep({ action }: Extract<Effect, { kind: 'keep-photo' }>, { dispatch }: Program): void {
    const { disk, folders } = this.#ports;
    const photo = takePhoto(disk.files, this.#path(), action, folders.roots);
    dispatch(
      photo.kind === 'good'
        ? { kind: 'photo-kept', action, photo: photo.value }
        : { kind: 'failed', problem: firstOf(photo.problems) },
    );
  }

  #path(): string {
    const path = this.#session();
    if (path === undefined) throw new Error('a photo is kept beside an open session');
    return path;
  }

  /** What serves a telephone, and what draws the code, is loaded only here. */
  async #start({ dispatch }: Program): Promise<void> {
    this.stop();
    const opening = this.#opening;
    const [{ openPhone }, { codeOf }, { networkAddress }] = await Promise.all([
      import('../../phone/phone.ts'),
      import('../../phone/code.ts'),
      import('../../phone/address.ts'),
    ]);
    const { host = networkAddress(networkInterfaces()), open = openPhone } =
      this.#ports.phone ?? {};
    const shut = (problem: Problem) => dispatch({ kind: 'phone-refused', problem });
    if (host === undefined) return shut(noNetwork);
    const phone = await open(host, {
      take: (bytes) => this.#take(bytes, dispatch),
      idle: () => shut(longAlone),
    });
    if (opening !== this.#opening) {
      if (phone.kind === 'good') phone.value.stop();
      return undefined;
    }
    if (phone.kind === 'bad') return shut(firstOf(phone.problems));
    const { url, stop } = phone.value;
    this.#stop = stop;
    return dispatch({ kind: 'phone-ready', url, code: codeOf(url) });
  }

  /** What a telephone sent is held against the same rules as a file, and on the disk before it counts. */
  #take(bytes: Uint8Array, dispatch: Program['dispatch']): Problem | undefined {
    const picture = pictureOf(bytes);
    if (picture.kind === 'bad') return firstOf(picture.problems);
    const session = this.#path();
    const photo = attempt(session, () =>
      keepPhoto(this.#ports.disk.files, session, picture.value, ''),
    );
    if (photo.kind === 'good') dispatch({ kind: 'photo-arrived', photo: photo.value });
    return problemsOf(photo)[0];
  }
}

const noNetwork: Problem = {
  code: 'no-network',
  message: 'This machine is on no network that a phone could reach.',
  mend: 'Join one, or keep the photo by its path.',
};

const longAlone: Problem = {
  code: 'phone-idle',
  message: 'Nothing came for 10 minutes: the page is shut.',
  mend: 'Leave it and open it again.',
};

const notLoaded = (error: unknown): Problem => ({
  code: 'phone-not-loaded',
  message: `The page for the phone could not be opened (${String(error)}).`,
  mend: 'Keep the photo by its path.',
});
