import type { NetworkInterfaceInfo } from 'node:os';

type Interfaces = Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>>;

/** Names of networks that are inside the machine, or lead through it somewhere else. */
const inside = /^(docker|br-|veth|virbr|vmnet|vboxnet|tun|tap|wg|utun|zt)/;

/** Addresses that a network at home or in a shop hands out (RFC 1918). */
const atHome = /^(10\.|192\.168\.|172\.(1[6-9]|2\d|3[01])\.)/;

/**
 * The address by which a telephone on the same network reaches this machine; undefined where there
 * is none. One that a shop's network hands out comes first.
 * @param interfaces as `networkInterfaces` of node:os tells them
 */
export function networkAddress(interfaces: Interfaces): string | undefined {
  const found = Object.entries(interfaces)
    .filter(([name]) => !inside.test(name))
    .flatMap(([, addresses = []]) => addresses)
    .filter(({ family, internal, address }) => family === 'IPv4' && !internal && !isOwn(address))
    .map(({ address }) => address);
  return found.find((address) => atHome.test(address)) ?? found[0];
}

/** An address that a machine gives itself where no network answers (RFC 3927). */
const isOwn = (address: string): boolean => address.startsWith('169.254.');
