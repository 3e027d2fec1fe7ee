import { describe, expect, it } from 'vitest';
import { readFrontDoorEnv } from './env.ts';

describe('readFrontDoorEnv', () => {
  it('starts with no settings at all', () => {
    expect(readFrontDoorEnv({})).toEqual({
      port: 4300,
      host: '127.0.0.1',
      apiOrigins: ['http://127.0.0.1:4310'],
      dataDir: '.data',
      tlsFiles: null,
      localCertificate: false,
      trustProxy: false,
    });
  });

  it('reads a list of API origins and drops paths', () => {
    const { apiOrigins } = readFrontDoorEnv({ API_ORIGINS: 'http://api-1:4000/, http://api-2:4000/ignored' });
    expect(apiOrigins).toEqual(['http://api-1:4000', 'http://api-2:4000']);
  });

  it('names each setting it refuses', () => {
    expect(() => readFrontDoorEnv({ PORT: 'lots', API_ORIGINS: 'somewhere' })).toThrow(
      /PORT[\s\S]*API_ORIGINS/,
    );
  });

  it('refuses half a certificate', () => {
    expect(() => readFrontDoorEnv({ TLS_CERT_FILE: 'cert.pem' })).toThrow(
      /both TLS_CERT_FILE and TLS_KEY_FILE/,
    );
  });
});
