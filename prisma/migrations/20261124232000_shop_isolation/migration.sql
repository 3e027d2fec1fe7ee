-- Shops cannot see each other, whatever the program above does. The API's role owns nothing, cannot bypass these
-- policies, and says for each transaction which shop, which person or which secret it speaks for.

DO $$
BEGIN
  IF NOT EXISTS (SELECT 1 FROM pg_roles WHERE rolname = 'gusset_api') THEN
    CREATE ROLE gusset_api NOLOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE;
  END IF;
END $$;

GRANT USAGE ON SCHEMA public TO gusset_api;

-- After a transaction-local setting ends its value is the empty string, so each reader maps that to null.
CREATE FUNCTION gusset_shop() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE AS
$$ SELECT NULLIF(current_setting('app.shop_id', true), '')::uuid $$;

CREATE FUNCTION gusset_user() RETURNS text LANGUAGE sql STABLE PARALLEL SAFE AS
$$ SELECT NULLIF(current_setting('app.user_id', true), '') $$;

CREATE FUNCTION gusset_token() RETURNS text LANGUAGE sql STABLE PARALLEL SAFE AS
$$ SELECT NULLIF(current_setting('app.token_hash', true), '') $$;

-- Puts one shop-owned table behind the shop's wall. Every later migration calls it for each table it adds.
CREATE FUNCTION gusset_isolate(shop_table text) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', shop_table);
  EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', shop_table);
  EXECUTE format(
    'CREATE POLICY own_shop ON %I FOR ALL TO PUBLIC USING (shop_id = gusset_shop()) WITH CHECK (shop_id = gusset_shop())',
    shop_table);
  EXECUTE format('GRANT SELECT, INSERT, UPDATE, DELETE ON %I TO gusset_api', shop_table);
END $$;
REVOKE EXECUTE ON FUNCTION gusset_isolate(text) FROM PUBLIC;

SELECT gusset_isolate(table_name)
FROM information_schema.columns
WHERE table_schema = 'public' AND column_name = 'shop_id';

-- The shop itself: the current one, or one that the signed-in person belongs to (to choose between several).
ALTER TABLE shop ENABLE ROW LEVEL SECURITY;
ALTER TABLE shop FORCE ROW LEVEL SECURITY;
CREATE POLICY current_shop ON shop FOR ALL TO PUBLIC USING (id = gusset_shop()) WITH CHECK (id = gusset_shop());
CREATE POLICY shops_of_the_person ON shop FOR SELECT TO PUBLIC USING (
  EXISTS (SELECT 1 FROM membership m WHERE m.shop_id = shop.id AND m.user_id = gusset_user() AND m.ended_at IS NULL));
GRANT SELECT, INSERT, UPDATE ON shop TO gusset_api;

CREATE POLICY own_memberships ON membership FOR SELECT TO PUBLIC USING (user_id = gusset_user());

-- A secret shows its own row and no other: whoever presents it need not be signed in.
CREATE POLICY presented_secret ON access_token FOR SELECT TO PUBLIC USING (token_hash = gusset_token());

-- Sign-in tables belong to no shop.
GRANT SELECT, INSERT, UPDATE, DELETE ON "user", session, account, verification, rate_limit TO gusset_api;

-- What is issued, quoted or written in the record stays as it was.
REVOKE UPDATE, DELETE ON sheet_issue FROM gusset_api;
GRANT UPDATE (checked_by_name, checked_at) ON sheet_issue TO gusset_api;

REVOKE UPDATE, DELETE ON quote FROM gusset_api;
GRANT UPDATE (sent_at, sent_to, first_seen_at, approved_at, approved_by_name, approved_from, declined_at, superseded_at)
  ON quote TO gusset_api;

REVOKE UPDATE, DELETE ON quote_message FROM gusset_api;
REVOKE UPDATE, DELETE ON plan_run FROM gusset_api;
GRANT DELETE ON plan_run TO gusset_api;

CREATE FUNCTION gusset_refuse_approval_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.approved_at IS NOT NULL AND (
    NEW.approved_at IS DISTINCT FROM OLD.approved_at
    OR NEW.approved_by_name IS DISTINCT FROM OLD.approved_by_name
    OR NEW.declined_at IS NOT NULL) THEN
    RAISE EXCEPTION 'an approved quote is not changed' USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER approval_stands BEFORE UPDATE ON quote FOR EACH ROW EXECUTE FUNCTION gusset_refuse_approval_change();

CREATE FUNCTION gusset_refuse_rewriting() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'the record of what happened is only added to' USING ERRCODE = 'restrict_violation';
END $$;
CREATE TRIGGER only_added_to BEFORE UPDATE OR DELETE ON audit_entry FOR EACH ROW EXECUTE FUNCTION gusset_refuse_rewriting();
CREATE TRIGGER never_emptied BEFORE TRUNCATE ON audit_entry FOR EACH STATEMENT EXECUTE FUNCTION gusset_refuse_rewriting();
REVOKE UPDATE, DELETE ON audit_entry FROM gusset_api;

-- Search: trigram indexes for names, plates and part names (the search box looks inside words).
CREATE EXTENSION IF NOT EXISTS pg_trgm;
CREATE INDEX customer_name_trgm ON customer USING gin (lower(name) gin_trgm_ops);
CREATE INDEX vehicle_plate_trgm ON vehicle USING gin (lower(plate) gin_trgm_ops);
CREATE INDEX part_name_trgm ON part USING gin (lower(maker || ' ' || name || ' ' || code) gin_trgm_ops);
CREATE INDEX job_title_trgm ON job USING gin (lower(title) gin_trgm_ops);
