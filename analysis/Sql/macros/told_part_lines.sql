-- A macro for the part lines of jobs as a van plan sees them, with how each tells its part: by number; by model, where it names
-- a component and lists have exactly one such part for the model family; by words, where no line of the shop tells a number and
-- family and component stand for it; or not at all.
create or replace macro told_part_lines() as table
    with only_parts as (
        select model_family, component, min(part_number) as part_number
        from fitments
        where basis in ('listed', 'both') and component is not null
        group by model_family, component
        having count(*) = 1
    ),
    lines as (
        select
            p.job_id,
            p.line,
            p.component,
            p.quantity,
            p.part_number,
            p.fitted_number,
            o.part_number as only_number,
            -- a number that was typed and is not known is another part
            case when p.part_raw is null then j.model_family || ' ' || replace(p.component, '_', ' ') end as words
        from job_parts as p
        left join jobs as j using (job_id)
        left join only_parts as o on p.part_raw is null and o.model_family = j.model_family and o.component = p.component
    ),
    any_number as (
        select coalesce(bool_or(part_number is not null or only_number is not null), false) as has_numbers from lines
    )
    select
        l.job_id,
        l.line,
        l.component,
        l.quantity,
        coalesce(l.part_number, l.only_number, case when not a.has_numbers then l.words end) as part_number,
        coalesce(l.fitted_number, l.part_number, l.only_number, case when not a.has_numbers then l.words end) as fitted_number,
        case
            when l.part_number is not null then 'number'
            when l.only_number is not null then 'model'
            when not a.has_numbers and l.words is not null then 'words'
            else 'nothing'
        end as told_by
    from lines as l
    cross join any_number as a
