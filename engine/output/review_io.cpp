#include "engine/output/review_io.h"

#include "engine/base/csv_table.h"
#include "engine/pond/local_time.h"

namespace engine {

std::string reviewCsv(const Review& review) {
    CsvWriter table(
        "date,dawn_with_p05,dawn_with_p50,dawn_with_p95,dawn_without_p05,dawn_without_p50,dawn_without_p95,"
        "bottom_with_p05,bottom_with_p50,bottom_with_p95,bottom_without_p05,bottom_without_p50,bottom_"
        "without_p95,"
        "dawn_mg_per_l,bottom_mg_per_l,secchi_m");
    for (const ReviewRow& row : review.rows) {
        table.text(formatDate(dateOfDay(review.fit.known, row.day)));
        for (const Band* band : {&row.dawnWith, &row.dawnWithout, &row.bottomWith, &row.bottomWithout}) {
            table.number(band->p05).number(band->p50).number(band->p95);
        }
        table.number(row.dawn).number(row.bottom).number(row.secchi).end();
    }
    return table.take();
}

}  // namespace engine
