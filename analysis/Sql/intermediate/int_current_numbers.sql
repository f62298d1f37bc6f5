-- One row per old number and number that stands for it, by the arrows known on the day in the
-- session variable arrows_as_of (null: all of them).
-- Walks double their length every round, so a chain of 5,000 takes 13; members of a cycle stand for themselves.
with recursive
known as (
    select
        old_number,
        new_number,
        bool_or(kind = 'kit_part') as is_kit,
        bool_or(kind = 'alternative') and not bool_or(kind = 'kit_part') as is_alternative,
        max(quantity)::bigint as quantity,
        min(source_file || ':' || lpad(source_line::varchar, 9, '0')) as listed_at
    from supersessions
    where new_number is not null and (
            getvariable('arrows_as_of') is null or effective_on is null or effective_on <= getvariable('arrows_as_of')::date
        )
    group by old_number, new_number
),
numbers as (
    select number, row_number() over (order by number)::integer as id
    from (select old_number as number from known union select new_number from known)
),
-- several plain replacements of one number are alternatives, nothing says that all are needed; beside a kit any is
arrows as (
    select
        o.id as x,
        n.id as y,
        case when k.is_kit then k.quantity else 1 end as quantity,
        k.is_kit,
        k.is_alternative
            or (not k.is_kit and (
                count(*) filter (not k.is_kit and not k.is_alternative) over (partition by o.id) > 1
                or bool_or(k.is_kit) over (partition by o.id)
            )) as is_alternative,
        row_number() over (partition by o.id order by k.listed_at, k.new_number) as place
    from known as k
    join numbers as o on o.number = k.old_number
    join numbers as n on n.number = k.new_number
),
last_round as (
    select ceil(log2(count(*) + 1))::integer + 1 as n from arrows
),
walks(round, x, y) as (
    select 0, x, y from arrows
    union all
    select distinct a.round + 1, a.x, coalesce(b.y, a.y)
    from walks as a
    left join walks as b on b.x = a.y
    where a.round < (select n from last_round) and exists (from walks as w semi join arrows on arrows.x = w.y)
),
endless as (
    select x, y from walks semi join arrows on arrows.x = walks.y where round = (select n from last_round)
),
-- what can walk on for ever and be walked to for ever lies on a cycle, or, where the way forks, between two
whirl as (
    select arrows.x, arrows.y
    from arrows
    semi join endless as starts on starts.x = arrows.x
    semi join endless as on_ends on on_ends.y = arrows.x
    semi join endless as next_starts on next_starts.x = arrows.y
    semi join endless as next_ends on next_ends.y = arrows.y
),
forked as (
    select count(*) > count(distinct x) as yes from whirl
),
rounds(x, y) as (
    select x, y from whirl where (select yes from forked)
    union
    select r.x, w.y from rounds as r join whirl as w on w.x = r.y
),
members as (
    select distinct x from rounds where x = y
    union
    select x from whirl where not (select yes from forked)
),
ways as (
    select * from arrows anti join members using (x)
),
resolved(round, x, y, quantity, is_kit, is_alternative, place) as (
    select 0, x, y, quantity, is_kit, is_alternative, place::double from ways
    union all
    select
        a.round + 1,
        a.x,
        coalesce(b.y, a.y),
        case when bool_or(a.is_alternative or coalesce(b.is_alternative, false))
            then max(a.quantity * coalesce(b.quantity, 1))
            else sum(a.quantity * coalesce(b.quantity, 1))::bigint end,
        bool_or(a.is_kit or coalesce(b.is_kit, false)),
        bool_or(a.is_alternative or coalesce(b.is_alternative, false)),
        min(a.place + coalesce(b.place, 0) / 1000)
    from resolved as a
    left join resolved as b on b.x = a.y
    where a.round < (select n from last_round) and exists (from resolved as w semi join ways on ways.x = w.y)
    group by a.round, a.x, coalesce(b.y, a.y)
),
answers as (
    select x, y, quantity, is_kit, is_alternative, place, false as in_cycle
    from resolved
    where round = (select max(round) from resolved)
    union all
    select x, x, 1, false, false, 1.0, true
    from members
)
select
    o.number as old_number,
    c.number as current_number,
    a.quantity::integer as quantity,
    case
        when a.in_cycle then 'cycle'
        when a.is_alternative then 'alternative'
        when a.is_kit then 'kit_part'
        else 'replaces'
    end as via,
    row_number() over (partition by a.x order by a.is_alternative, a.place, c.number)::integer as place
from answers as a
join numbers as o on o.id = a.x
join numbers as c on c.id = a.y
order by old_number, place
