-- One row per van of the staged jobs and counts.
select van from staged_jobs where van is not null
union
select van from staged_van_counts where van is not null
order by van
