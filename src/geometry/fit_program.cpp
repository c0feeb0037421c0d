// The program is solved in its dual form: three rows (s, x, y) and a column per limit, so that a
// basis is never larger than 3 × 3 however many limits there are. The scale and the move are then
// the prices of the rows. Least Σ limit·y with Σ s·y ≥ 1, Σ x·y = 0, Σ y·y = 0, y ≥ 0; it has no
// lower end just when no scale keeps the limits. Duality: any book on linear programming.
#include "geometry/fit_program.h"

#include <glpk.h>

#include <array>
#include <memory>

namespace tw {

namespace {

constexpr double kExact = 1e-10;  // of the optimum; the questions are asked in units near 1

using Program = std::unique_ptr<glp_prob, decltype(&glp_delete_prob)>;

Program dualOf(const std::vector<FitLimit>& limits) {
  Program program(glp_create_prob(), glp_delete_prob);
  glp_prob* p = program.get();
  glp_set_obj_dir(p, GLP_MIN);
  glp_add_rows(p, 3);
  glp_set_row_bnds(p, 1, GLP_LO, 1, 0);
  glp_set_row_bnds(p, 2, GLP_FX, 0, 0);
  glp_set_row_bnds(p, 3, GLP_FX, 0, 0);
  glp_add_cols(p, static_cast<int>(limits.size()));
  constexpr std::array<int, 4> kRows{0, 1, 2, 3};
  int column = 0;
  for (const FitLimit& l : limits) {
    ++column;
    glp_set_col_bnds(p, column, l.equal ? GLP_FR : GLP_LO, 0, 0);
    glp_set_obj_coef(p, column, l.limit);
    const std::array<double, 4> cells{0, l.s, l.x, l.y};
    glp_set_mat_col(p, column, 3, kRows.data(), cells.data());
  }
  return program;
}

}  // namespace

std::optional<ScaleAndMove> largestScale(const std::vector<FitLimit>& limits) {
  const Program program = dualOf(limits);
  glp_smcp how;
  glp_init_smcp(&how);
  how.msg_lev = GLP_MSG_OFF;
  how.tol_bnd = how.tol_dj = kExact;
  how.pricing = GLP_PT_STD;  // three rows: steepest edges do not pay
  if (glp_simplex(program.get(), &how) != 0) return {};
  if (glp_get_status(program.get()) != GLP_OPT) return {};
  return ScaleAndMove{glp_get_row_dual(program.get(), 1), glp_get_row_dual(program.get(), 2),
                      glp_get_row_dual(program.get(), 3)};
}

}  // namespace tw
