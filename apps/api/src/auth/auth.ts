// Sign-in by e-mail and password through a kept library. Sessions live in the database and end at once when revoked.
import { prismaAdapter } from '@better-auth/prisma-adapter';
import type { Doors } from '@gusset/database';
import { betterAuth } from 'better-auth';
import { APIError, createAuthMiddleware } from 'better-auth/api';
import type { Env } from '../env.ts';
import { ownOrigins } from '../plugins/own-origin.ts';
import { passwordProblem } from './password-rules.ts';

const DAY_SECONDS = 24 * 60 * 60;
/** A device that is used at least once in this time stays signed in, thirty days at the most. */
const SESSION_SECONDS = 30 * DAY_SECONDS;
const RESET_SECONDS = 60 * 60;
/** Carries an invitation's token with a sign-up. */
export const INVITATION_HEADER = 'x-gusset-invitation';
export const SESSION_COOKIE = '__Host-gusset-session';

export type SendResetMail = (to: string, link: string) => Promise<void>;

export function makeAuth(options: {
  readonly env: Pick<Env, 'AUTH_SECRET' | 'PUBLIC_URL' | 'SIGN_UP_CLOSED' | 'TRUST_PROXY_HOPS'>;
  readonly doors: Pick<Doors, 'signIn'>;
  /** Whether a token is an invitation that still stands: lets its holder in where sign-up is closed. */
  readonly isInvited: (token: string) => Promise<boolean>;
  readonly sendResetMail: SendResetMail;
  /** Requests a minute are counted in the database, shared by all replicas; tests may turn that off. */
  readonly limitRate?: boolean;
}) {
  const { env, doors, sendResetMail, isInvited, limitRate = true } = options;
  return betterAuth({
    appName: 'Gusset',
    baseURL: env.PUBLIC_URL,
    basePath: '/api/auth',
    secret: env.AUTH_SECRET,
    trustedOrigins: (request) => {
      const headers = Object.fromEntries(request?.headers ?? []);
      return [...ownOrigins(headers, env.PUBLIC_URL, env.TRUST_PROXY_HOPS > 0)];
    },
    telemetry: { enabled: false },
    database: prismaAdapter(doors.signIn, { provider: 'postgresql', transaction: true }),
    emailAndPassword: {
      enabled: true,
      minPasswordLength: 12,
      maxPasswordLength: 128,
      autoSignIn: true,
      revokeSessionsOnPasswordReset: true,
      resetPasswordTokenExpiresIn: RESET_SECONDS,
      sendResetPassword: ({ user, url }) => sendResetMail(user.email, url),
    },
    session: { expiresIn: SESSION_SECONDS, updateAge: DAY_SECONDS, cookieCache: { enabled: false } },
    rateLimit: {
      enabled: limitRate,
      storage: 'database',
      window: 60,
      max: 100,
      customRules: {
        '/sign-in/email': { window: 60, max: 10 },
        '/sign-up/email': { window: 60, max: 10 },
        '/request-password-reset': { window: 60, max: 5 },
      },
    },
    advanced: {
      // The library would prefix the name with __Secure-; ours is stricter and is set whole.
      useSecureCookies: false,
      cookies: {
        session_token: {
          name: SESSION_COOKIE,
          attributes: { secure: true, httpOnly: true, sameSite: 'lax', path: '/' },
        },
      },
      ipAddress: { ipAddressHeaders: ['x-gusset-client-address'] },
    },
    hooks: {
      before: createAuthMiddleware(async (context) => {
        if (context.path === '/sign-up/email' && env.SIGN_UP_CLOSED) {
          const token = context.headers?.get(INVITATION_HEADER) ?? '';
          if (!(await isInvited(token))) {
            throw new APIError('FORBIDDEN', {
              message: 'New people join by invitation here.',
              code: 'SIGN_UP_CLOSED',
            });
          }
        }
        const password = newPasswordOf(context.path, context.body);
        if (password === null) return;
        const problem = passwordProblem(password, emailOf(context.body));
        if (problem !== null)
          throw new APIError('BAD_REQUEST', { message: problem, code: 'PASSWORD_NOT_ACCEPTED' });
      }),
    },
  });
}

export type Auth = ReturnType<typeof makeAuth>;

function newPasswordOf(path: string, body: unknown): string | null {
  if (typeof body !== 'object' || body === null) return null;
  if (path === '/sign-up/email' && 'password' in body && typeof body.password === 'string')
    return body.password;
  const changes = path === '/reset-password' || path === '/change-password';
  if (changes && 'newPassword' in body && typeof body.newPassword === 'string') return body.newPassword;
  return null;
}

function emailOf(body: unknown): string {
  return typeof body === 'object' && body !== null && 'email' in body && typeof body.email === 'string'
    ? body.email
    : '';
}
