# One image for every process of the larger arrangement: API, worker, front door, migrations, mail catcher.
# Which one it is, the command in docker-compose.yml says.

FROM node:24-bookworm-slim AS build
WORKDIR /app
ENV NEXT_TELEMETRY_DISABLED=1 TURBO_TELEMETRY_DISABLED=1 DO_NOT_TRACK=1
COPY . .
# Packages by the lockfile, then the database client.
RUN --mount=type=cache,target=/root/.npm node scripts/bootstrap.mjs
RUN node node_modules/turbo/bin/turbo run build --filter=@gusset/web --output-logs=errors-only \
  && rm -rf apps/web/.next/cache \
  && npm prune --omit=dev --no-audit --no-fund

FROM node:24-bookworm-slim
WORKDIR /app
ENV NODE_ENV=production NEXT_TELEMETRY_DISABLED=1 DO_NOT_TRACK=1
COPY --from=build --chown=node:node /app /app
# Named volumes take over the owner of the folder that they cover.
RUN mkdir -p /files /mail /app/.data && chown node:node /files /mail /app/.data
USER node
CMD ["node", "apps/api/src/server.ts"]
