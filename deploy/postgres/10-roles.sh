#!/usr/bin/env bash
# Makes the database and its two roles on a PostgreSQL server: the owner, who makes and changes the tables, and the
# serving role, whom row security binds, so that the database itself keeps families apart. May be run again: passwords
# then become those given.
#
# The official image runs it when its data folder is new. On another server run it as a superuser:
#
#   COOPLESSONS_OWNER_PASSWORD=… COOPLESSONS_SERVING_PASSWORD=… ./10-roles.sh
#
# psql's own variables (PGHOST, PGPORT, PGUSER) say which server.
set -euo pipefail

export COOPLESSONS_DATABASE=${COOPLESSONS_DATABASE:-cooplessons}
export COOPLESSONS_OWNER=${COOPLESSONS_OWNER:-cooplessons_owner}
export COOPLESSONS_SERVING=${COOPLESSONS_SERVING:-cooplessons_serving}
: "${COOPLESSONS_OWNER_PASSWORD:?give the password of the owner role}"
: "${COOPLESSONS_SERVING_PASSWORD:?give the password of the serving role}"
if [ "$COOPLESSONS_OWNER" = "$COOPLESSONS_SERVING" ]; then
  echo "The owner and the serving role must be two roles: row security is the serving role's wall." >&2
  exit 1
fi

# The server hears passwords in these statements: it keeps them out of its log. They come by \getenv, not as arguments,
# which every user of the machine could read.
psql --no-psqlrc --quiet --set ON_ERROR_STOP=1 --username "${POSTGRES_USER:-${PGUSER:-postgres}}" --dbname postgres <<'SQL'
SET log_statement = 'none';
SET log_min_error_statement = 'panic';
SET log_min_duration_statement = -1;
\getenv database COOPLESSONS_DATABASE
\getenv owner COOPLESSONS_OWNER
\getenv serving COOPLESSONS_SERVING
\getenv owner_password COOPLESSONS_OWNER_PASSWORD
\getenv serving_password COOPLESSONS_SERVING_PASSWORD
SELECT format('CREATE ROLE %I', name) FROM (VALUES (:'owner'), (:'serving')) AS wanted (name)
  WHERE NOT EXISTS (SELECT 1 FROM pg_roles WHERE rolname = name) \gexec
ALTER ROLE :"owner" LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOREPLICATION NOBYPASSRLS PASSWORD :'owner_password';
ALTER ROLE :"serving" LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOREPLICATION NOBYPASSRLS PASSWORD :'serving_password';
SELECT format('CREATE DATABASE %I OWNER %I ENCODING ''UTF8'' TEMPLATE template0', :'database', :'owner')
  WHERE NOT EXISTS (SELECT 1 FROM pg_database WHERE datname = :'database') \gexec
REVOKE ALL ON DATABASE :"database" FROM PUBLIC;
GRANT CONNECT ON DATABASE :"database" TO :"serving";
SQL
