-- Macros for the mark of a row of each kind: rows with different marks describe different things.
create or replace macro job_mark(job_id) as hash('jobs', job_id);
create or replace macro job_part_mark(job_id, part_key, description) as
    hash('job_parts', concat_ws('|', job_id, coalesce(part_key, lower(description), '')));
create or replace macro order_mark(supplier, order_id, ordered_on, part_key, other_key, description) as
    hash('part_orders', concat_ws('|', supplier, order_id, ordered_on, coalesce(part_key, other_key, lower(description), '')));
create or replace macro part_mark(part_key) as hash('parts', part_key);
create or replace macro supersession_mark(old_key) as hash('supersessions', old_key);
create or replace macro alias_mark(alias_key) as hash('part_aliases', alias_key);
create or replace macro fitment_mark(part_key) as hash('fitments', part_key);
create or replace macro model_mark(model_key) as hash('models', model_key);
create or replace macro unit_mark(serial_key, place_key, model_key, row_hash) as
    hash('units', coalesce(serial_key, concat_ws('|', place_key, coalesce(model_key, ''), row_hash)));
create or replace macro van_count_mark(van, part_key) as hash('van_counts', concat_ws('|', van, part_key));
