import type { NetworkInterfaceInfo } from 'node:os';
import { expect, test } from 'vitest';
import { networkAddress } from '../../src/phone/address.ts';

const at = (address: string, internal = false): NetworkInterfaceInfo[] => [
  { address, internal, family: 'IPv4', netmask: '', mac: '', cidr: null },
];

test.each<[string, Parameters<typeof networkAddress>[0], string | undefined]>([
  ['on no network', { lo: at('127.0.0.1', true) }, undefined],
  ['on one', { lo: at('127.0.0.1', true), wlan0: at('192.168.1.7') }, '192.168.1.7'],
  ['with a network inside it', { docker0: at('172.17.0.1'), eth0: at('10.0.0.5') }, '10.0.0.5'],
  ['on two', { eth0: at('198.51.100.4'), wlan0: at('172.20.3.4') }, '172.20.3.4'],
  ['on one of public addresses', { eth0: at('198.51.100.4') }, '198.51.100.4'],
  ['without an answer from any', { eth0: at('169.254.3.4') }, undefined],
])('a machine %s', (_, interfaces, address) => {
  expect(networkAddress(interfaces)).toBe(address);
});
