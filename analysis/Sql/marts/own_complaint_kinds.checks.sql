-- One row per phrase that stands twice.
select words, 'stands twice' as fault from own_complaint_kinds group by words having count(*) > 1
