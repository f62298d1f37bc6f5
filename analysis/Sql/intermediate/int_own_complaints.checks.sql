-- One row per complaint that has not exactly one kind.
select words, 'is there twice' as fault from int_own_complaints group by words having count(*) > 1
union all
select words, 'has no kind' from int_own_complaints where complaint_kind is null
