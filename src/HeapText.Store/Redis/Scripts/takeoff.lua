-- Takes segments that were granted and not sent off the counts of a day. A count that has expired stays gone.
-- KEYS  1 segments the line has sent that day, 2 segments all lines have sent that day
-- ARGV  1 segments
-- Gives 1.

for i = 1, 2 do
  if redis.call('EXISTS', KEYS[i]) == 1 then redis.call('DECRBY', KEYS[i], ARGV[1]) end
end
return 1
