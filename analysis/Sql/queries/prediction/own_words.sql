-- One row per frequent phrase of the shop's own, with the complaint kind that it means.
select complaint_kind, words
from own_complaint_kinds
order by calls desc, words
