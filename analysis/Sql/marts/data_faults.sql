-- One row per contradiction found in the data itself.
with known_arrows as (
    from supersessions where effective_on is null or effective_on <= getvariable('arrows_as_of')::date
),
arrows_in_cycles as (
    select 'supersession_cycle' as fault_kind, s.old_number as subject,
        case when s.old_number = s.new_number
            then s.old_number || ' is said to replace itself.'
            else s.old_number || ' -> ' || s.new_number || ' is part of a circle; both stand for themselves.' end as message,
        s.source_file, s.source_line
    from known_arrows as s
    join int_current_numbers as o on o.old_number = s.old_number and o.via = 'cycle'
    join int_current_numbers as n on n.old_number = s.new_number and n.via = 'cycle'
),
plain_forks as (
    select 'supersession_fork', old_number,
        old_number || ' is replaced by several numbers and the list does not say whether all or any; taken as alternatives.',
        source_file, source_line
    from known_arrows
    where kind = 'replaces' and new_number is not null
    qualify count(distinct new_number) over (partition by old_number) > 1
),
-- an arrow is in it once as a replacement and once as a piece of a kit, or the number goes both ways
kits_and_more as (
    select 'supersession_contradiction', old_number,
        old_number || ' is listed as replaced by one number and again as a kit; the kit is followed.', source_file, source_line
    from known_arrows
    where kind in ('replaces', 'kit_part') and new_number is not null
    qualify count(distinct kind) over (partition by old_number) > 1
),
ended_and_replaced as (
    select 'supersession_contradiction', e.old_number,
        e.old_number || ' is listed as no longer made, and again as replaced by ' || r.new_number || ' from an earlier day.',
        e.source_file, e.source_line
    from known_arrows as e
    join known_arrows as r on r.old_number = e.old_number and r.new_number is not null
    where e.new_number is null and r.effective_on < e.effective_on
),
alias_meanings as (
    select supplier, alias_key, min(alias) as alias, string_agg(distinct k.part_number, ', ' order by k.part_number) as numbers,
        min(source_file) as source_file, min(source_line) as source_line
    from int_part_aliases as k
    left join int_current_numbers as n on n.old_number = k.part_number and n.place = 1
    group by supplier, alias_key
    having count(distinct coalesce(n.current_number, k.part_number)) > 1 and not bool_or(k.basis = 'reviewed')
),
part_collisions as (
    select 'part_number_collision', part_key,
        'Two parts of one list differ only in their separators; only the exact writing is followed.', source_file, source_line
    from int_catalog
    where collides and part_key not in (select typed_key from int_answered_part_numbers)
),
look_alike_models as (
    select 'model_number_collision', model_number,
        'Another listed model of the brand differs only in O/0 or I/L/1; neither is merged.', source_file, source_line
    from int_listed_models
    qualify count(*) over (partition by brand_key, model_confusable) > 1
        and model_confusable not in (
            select translate(r.subject_key, 'OIL', '011')
            from review_collisions as r
            where r.fault_kind = 'model_number_collision' and r.answer_key in (select model_key from int_listed_models)
        )
),
family_conflicts as (
    select 'model_in_two_families', model_raw, 'The model list names more than one family for this model; the last one is used.',
        source_file, source_line
    from staged_models
    where model_family is not null
    qualify count(distinct model_family) over (partition by compact_key(brand), model_key) > 1
        and not bool_or(model_family in (
            select r.answer from review_collisions as r where r.fault_kind = 'model_in_two_families' and r.subject_key = model_key
        )) over (partition by compact_key(brand), model_key)
),
serials as (
    select 'serial_breaks_rule', job_id, serial_fault, source_file, source_line from int_job_rows where serial_fault is not null
),
impossible_serials as (
    select 'serial_fits_no_date', j.job_id,
        'No build date the serial can mean agrees with the model''s years and the day of the call.', j.source_file, j.source_line
    from int_job_rows as j
    anti join int_build_candidates as c using (place)
    where j.serial_candidates is not null
),
early_receipts as (
    select 'received_before_ordered', order_id, 'Received on ' || received_on || ', ordered on ' || ordered_on || '.', source_file, source_line
    from part_orders
    where received_on < ordered_on
),
early_closings as (
    select 'closed_before_opened', job_id, 'Closed on ' || closed_on || ', opened on ' || opened_on || '.', source_file, source_line
    from jobs
    where closed_on < opened_on
),
-- one number for several jobs; said once for all where that is the rule and no slip
several_jobs as (
    select 'number_of_several_jobs', n.job_number,
        'Job number ' || n.job_number || ' stands here for another unit or day; kept as job ' || n.job_id || '.', j.source_file, n.source_line
    from int_job_numbers as n
    join source_files as j using (source_order)
    where n.contradicts and n.job_id like '%~%' and exists (from int_job_key where unexplained <= 100)
    qualify row_number() over (partition by n.job_id order by n.source_order, n.source_line) = 1
),
several_tellings as (
    select k.row_key as job_id
    from int_natural_keys as k
    anti join (from int_row_status where status <> 'continued') as s using (source_order, source_line)
    where k.kind = 'jobs'
    group by k.row_key
    having count(distinct k.told) > 1
),
told_differently as (
    select
        j.job_id,
        list_filter([
            case when count(distinct j.closed_on) > 1 then 'closing day' end,
            case when count(distinct j.technician) > 1 then 'technician' end,
            case when count(distinct j.van) > 1 then 'van' end,
            case when count(distinct j.complaint_text) > 1 then 'complaint' end,
            case when count(distinct nullif(j.outcome, 'unknown')) > 1 then 'outcome' end,
            case when count(distinct j.visits) > 1 then 'visits' end,
            case when count(distinct j.labour_minutes) > 1 then 'working time' end,
            case when count(distinct j.warranty) > 1 then 'warranty' end
        ], x -> x is not null) as fields,
        string_agg(j.source_line, ', ' order by j.source_order, j.source_line) as lines
    from int_numbered_jobs as j
    semi join several_tellings using (job_id)
    anti join (from int_row_status where status <> 'continued') as s using (source_order, source_line)
    group by j.job_id
),
job_contradictions as (
    select 'job_told_differently', d.job_id,
        'Lines ' || d.lines || ' differ in ' || array_to_string(d.fields, ', ') || '; line ' || r.source_line || ' speaks for the job.',
        r.source_file, r.source_line
    from told_differently as d
    join int_job_rows as r using (job_id)
    where len(d.fields) > 0
),
answers as (
    select 'answer_not_understood', subject, message, source_file, source_line from int_answer_faults
),
together as (
    from arrows_in_cycles
    union all from plain_forks
    union all from kits_and_more
    union all from ended_and_replaced
    union all
    select
        'alias_of_two_parts', alias, 'This number of ' || supplier || ' stands for ' || numbers || '; it is not followed.',
        source_file, source_line
    from alias_meanings
    union all from part_collisions
    union all from look_alike_models
    union all from family_conflicts
    union all from serials
    union all from impossible_serials
    union all from early_receipts
    union all from early_closings
    union all from several_jobs
    union all from job_contradictions
    union all from answers
)
select fault_kind, subject, message, source_file, source_line
from together
order by fault_kind, subject, source_file, source_line, message
