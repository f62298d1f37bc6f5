-- One row per family and part that stand twice, or whose basis contradicts the count of jobs.
select model_family, part_number, 'stands twice' as fault from fitments group by model_family, part_number having count(*) > 1
union all
select model_family, part_number, 'basis and count disagree' from fitments where (basis = 'listed') <> (times_seen = 0)
