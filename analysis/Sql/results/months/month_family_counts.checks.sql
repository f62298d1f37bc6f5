-- One row per family and month with more calls than the month has.
select * from month_family_counts where calls > family_known
