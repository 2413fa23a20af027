import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { calledFromOutside } from '../../server/doors/hosts.ts';
import { BadOption, optionsFrom } from '../../server/options.ts';

describe('what the program is told', () => {
  test('nothing: this machine only, port 8377, ./data', () => {
    expect(optionsFrom({}, [])).toEqual({
      port: 8377,
      host: '127.0.0.1',
      dataFolder: resolve('data'),
      isDevelopment: false,
      isOnNetwork: false,
    });
  });

  test('PORT, HOST and DATA_DIR, empty ones as if left out', () => {
    expect(optionsFrom({ PORT: '0', HOST: 'localhost', DATA_DIR: '/tmp/x' }, ['--dev'])).toEqual({
      port: 0,
      host: 'localhost',
      dataFolder: resolve('/tmp/x'),
      isDevelopment: true,
      isOnNetwork: false,
    });
    expect(optionsFrom({ PORT: '', HOST: '' }, []).port).toBe(8377);
  });

  test('the network is on by its switch, or by a HOST beyond this machine', () => {
    expect(optionsFrom({}, ['--network'])).toMatchObject({ host: '0.0.0.0', isOnNetwork: true });
    expect(optionsFrom({ HOST: '192.168.7.7' }, [])).toMatchObject({ host: '192.168.7.7', isOnNetwork: true });
    expect(optionsFrom({ HOST: '::1' }, [])).toMatchObject({ isOnNetwork: false });
  });

  test.each(['70000', '-1', '80x', '1.5'])('PORT=%s is refused in a sentence', (PORT) => {
    expect(() => optionsFrom({ PORT }, [])).toThrow(
      new BadOption(`PORT must be a whole number from 0 to 65535; "${PORT}" is none.`),
    );
  });

  test('an unknown switch is refused with the known ones', () => {
    expect(() => optionsFrom({}, ['--fast'])).toThrow(/'--fast'.*The switches are --dev and --network\.$/);
  });
});

test('from outside it is called by what it listens on', () => {
  expect(calledFromOutside('192.168.7.7')).toEqual(['192.168.7.7']);
  expect(calledFromOutside('Bench.local')).toEqual(['bench.local']);
  expect(calledFromOutside('fd00::2')).toEqual(['[fd00::2]']);
  expect(calledFromOutside('0.0.0.0').every((address) => /^\d+\.\d+\.\d+\.\d+$/.test(address))).toBe(true);
  expect(calledFromOutside('0.0.0.0')).not.toContain('127.0.0.1');
});
