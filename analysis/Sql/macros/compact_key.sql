-- Letters and digits of a number in upper case; for texts whose key was not made when they were read.
create or replace macro compact_key(raw) as regexp_replace(upper(coalesce(raw, '')), '[^A-Z0-9]', '', 'g');
